//go:build !race

package match

// racing tells that the race detector is on.
const racing = false
