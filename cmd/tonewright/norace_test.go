//go:build !race

package main

// racing tells that the race detector is on.
const racing = false
