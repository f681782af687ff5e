//go:build !race

package analyze

// racing tells that the race detector is on.
const racing = false
