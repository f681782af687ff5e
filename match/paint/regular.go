// Reading a file that a painter names, whole, whatever it turns out to be.

package paint

import (
	"errors"
	"fmt"
	"io"
	"os"
)

// ReadRegular returns what a file holds, up to one byte more than most: a longer
// result tells a file that is too large, which is for the caller to say.
// errors.Is(err, os.ErrNotExist) tells a file that is not there. A folder, a device or
// a pipe is an error, since opening a pipe would wait for its writer. The error names
// the file.
func ReadRegular(file string, most int64) ([]byte, error) {
	if info, err := os.Stat(file); err == nil && !info.Mode().IsRegular() {
		return nil, fmt.Errorf("%s: is a folder, a device or a pipe; name an ordinary file", file)
	}
	f, err := os.Open(file)
	if err != nil {
		return nil, fmt.Errorf("%s: cannot be opened: %w", file, cause(err))
	}
	defer f.Close()
	text, err := io.ReadAll(io.LimitReader(f, most+1))
	if err != nil {
		return nil, fmt.Errorf("%s: cannot be read: %w", file, cause(err))
	}
	return text, nil
}

// cause returns the reason without the file name that os puts before it.
func cause(err error) error {
	if path := (*os.PathError)(nil); errors.As(err, &path) {
		return path.Err
	}
	return err
}
