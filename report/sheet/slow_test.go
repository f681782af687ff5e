package sheet

import "testing"

// slow skips a test that measures whole sheets dot by dot under the race detector, which
// makes it many times as slow and learns nothing from it. CI runs it without.
func slow(t *testing.T) {
	t.Helper()
	if racing {
		t.Skip("many cases: run without -race")
	}
}
