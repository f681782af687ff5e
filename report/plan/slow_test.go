package plan

import "testing"

// slow skips a test of many made cases under the race detector, which makes it ten
// times as slow and learns nothing from the hundredth case. CI runs it without.
func slow(t *testing.T) {
	t.Helper()
	if racing {
		t.Skip("many cases: run without -race")
	}
}
