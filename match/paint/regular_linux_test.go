package paint

import (
	"path/filepath"
	"syscall"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// A pipe that nobody writes to would be waited for without end.
func TestReadRegularRefusesAPipe(t *testing.T) {
	pipe := filepath.Join(t.TempDir(), "pipe")
	require.NoError(t, syscall.Mkfifo(pipe, 0o600))
	_, err := ReadRegular(pipe, 10)
	assert.ErrorContains(t, err, "pipe: is a folder, a device or a pipe; name an ordinary file")
	_, err = ReadBox(pipe)
	assert.ErrorContains(t, err, "is a folder, a device or a pipe")
}

func TestReadRegularIsBounded(t *testing.T) {
	data, err := ReadRegular(write(t, "0123456789"), 4)
	require.NoError(t, err)
	assert.Len(t, data, 5, "one more than most, to tell that there is more")
}
