package answer

import (
	"path/filepath"
	"syscall"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// A pipe may never end, and is not read.
func TestAPlanThatIsAPipe(t *testing.T) {
	pipe := filepath.Join(t.TempDir(), "plan.json")
	require.NoError(t, syscall.Mkfifo(pipe, 0o600))
	said := make(chan error, 1)
	go func() {
		_, _, err := findAim("A1", pipe, nil)
		said <- err
	}()
	select {
	case err := <-said:
		assert.ErrorContains(t, err, "it is no plain file")
	case <-time.After(10 * time.Second):
		t.Fatal("still waiting for the pipe")
	}
}
