//go:build !race

package plan

// racing tells that the race detector is on.
const racing = false
