//go:build race

package sheet

// racing tells that the race detector is on.
const racing = true
