package main

import (
	"bytes"
	"errors"
	"fmt"
	"io"
	"io/fs"
	"os"
	"path/filepath"
	"slices"
)

// output is a file to be written.
type output struct {
	name string
	data []byte
}

// targetOf returns where a result of that name is written: behind a link, the file it
// leads to. Only a plain file may be written over, and its folder must be there.
func targetOf(name string) (string, error) {
	if real, err := filepath.EvalSymlinks(name); err == nil {
		name = real
	} else if to, err := os.Readlink(name); err == nil { // a link to what is not there yet
		if !filepath.IsAbs(to) {
			to = filepath.Join(filepath.Dir(name), to)
		}
		name = to
	}
	info, err := os.Stat(name)
	switch {
	case err == nil && info.IsDir():
		return "", fmt.Errorf("%s: is a folder; give a file name in it", name)
	case err == nil && !info.Mode().IsRegular():
		return "", fmt.Errorf("%s: is no plain file and cannot be written over; choose another name", name)
	case err == nil && info.Mode().Perm()&0o200 == 0:
		return "", fmt.Errorf("%s: is protected from writing; take the protection off or choose another name", name)
	}
	folder := filepath.Dir(name)
	if real, err := filepath.EvalSymlinks(folder); err == nil {
		return filepath.Join(real, filepath.Base(name)), nil
	}
	return "", fmt.Errorf("%s: cannot be written here: there is no folder %s; make it first", name, folder)
}

// result is a file that is asked for by a flag, or by the key of its name, and is written
// from a T.
type result[T any] struct {
	flag, file string
	write      func(io.Writer, T) error
}

// asked returns the results that have a file.
func asked[T any](results []result[T]) []result[T] {
	return slices.DeleteFunc(results, func(r result[T]) bool { return r.file == "" })
}

// targetsOf says where each result goes, after making sure that nothing else is lost by
// it: reads are the files that they are made from.
func targetsOf[T any](results []result[T], reads []string) ([]string, error) {
	targets := make([]string, len(results))
	for i, r := range results {
		target, err := targetOf(r.file)
		if err != nil {
			return nil, err
		}
		for _, input := range reads {
			if sameFile(target, input) {
				return nil, usageError("%s is read and would be written over: choose another file for the result", r.file)
			}
		}
		for k, other := range targets[:i] {
			if sameFile(target, other) || absolute(target) == absolute(other) {
				return nil, usageError("--%s and --%s name the same file %s", results[k].flag, r.flag, r.file)
			}
		}
		targets[i] = target
	}
	return targets, nil
}

// made writes each result, to be put where targetsOf says.
func made[T any](results []result[T], targets []string, from T) (files []output, err error) {
	for i, r := range results {
		var b bytes.Buffer
		if err := r.write(&b, from); err != nil {
			return nil, err
		}
		files = append(files, output{targets[i], b.Bytes()})
	}
	return files, nil
}

// sameFile tells whether two names lead to one file that is there.
func sameFile(a, b string) bool {
	one, err := os.Stat(a)
	if err != nil {
		return false
	}
	other, err := os.Stat(b)
	return err == nil && os.SameFile(one, other)
}

func absolute(file string) string {
	path, err := filepath.Abs(file)
	if err != nil {
		return file
	}
	return path
}

// place writes all files beside their places and then moves them in, so that an
// earlier file stays whole until the new one is complete.
func place(files []output) error {
	temporary := make([]string, len(files))
	defer func() {
		for _, name := range temporary {
			if name != "" {
				os.Remove(name)
			}
		}
	}()
	for i, f := range files {
		name, err := writeBeside(f)
		if err != nil {
			return err
		}
		temporary[i] = name
	}
	for i, f := range files {
		if err := os.Rename(temporary[i], f.name); err != nil {
			return fmt.Errorf("%s: %s; choose another file", f.name, reason(err))
		}
		temporary[i] = ""
	}
	return nil
}

// writeBeside writes the file under a temporary name in its folder.
func writeBeside(f output) (name string, err error) {
	t, err := os.CreateTemp(filepath.Dir(f.name), ".tonewright-*")
	if err != nil {
		return "", fmt.Errorf("%s: cannot be written here: %s", f.name, reason(err))
	}
	mode := fs.FileMode(0o644)
	if info, err := os.Stat(f.name); err == nil {
		mode = info.Mode().Perm() // as the earlier one had it
	}
	_, err = t.Write(f.data)
	if err == nil {
		err = t.Chmod(mode)
	}
	if closing := t.Close(); err == nil {
		err = closing
	}
	if err != nil {
		os.Remove(t.Name())
		return "", fmt.Errorf("%s: could not be written: %s", f.name, reason(err))
	}
	return t.Name(), nil
}

// reason returns the system's word for a failure, without the temporary name.
func reason(err error) string {
	if pathErr, ok := errors.AsType[*fs.PathError](err); ok {
		return pathErr.Err.Error()
	}
	if linkErr, ok := errors.AsType[*os.LinkError](err); ok {
		return linkErr.Err.Error()
	}
	return err.Error()
}
