package main

import (
	"bytes"
	"errors"
	"fmt"
	"image/jpeg"
	"os"
	"os/exec"
	"path/filepath"
	"strconv"
	"strings"
	"testing"

	"github.com/rogpeppe/go-internal/testscript"
)

func TestMain(m *testing.M) {
	testscript.Main(m, map[string]func(){"tonewright": main, "decode-only": decodeOnly, "tonewright-and-peak": tonewrightAndPeak})
}

// Each script in testdata/script is one behaviour of the program as typed.
func TestScripts(t *testing.T) {
	demo, err := filepath.Abs("../../testdata")
	if err != nil {
		t.Fatal(err)
	}
	testscript.Run(t, testscript.Params{
		Dir: "testdata/script",
		Setup: func(e *testscript.Env) error {
			e.Setenv("DEMO", demo)
			return nil
		},
		Condition: func(cond string) (bool, error) {
			if cond != "race" {
				return false, fmt.Errorf("unknown condition %q", cond)
			}
			return racing, nil
		},
		Cmds: map[string]func(*testscript.TestScript, bool, []string){"exits": exits, "cardphoto": cardPhoto},
	})
}

// exits runs a program and checks its exit code: exits 2 tonewright plan.
func exits(ts *testscript.TestScript, neg bool, args []string) {
	if neg || len(args) < 2 {
		ts.Fatalf("usage: exits CODE PROGRAM [ARGUMENTS]")
	}
	want, err := strconv.Atoi(args[0])
	ts.Check(err)
	err = ts.Exec(args[1], args[2:]...)
	got := 0
	if exit, ok := errors.AsType[*exec.ExitError](err); ok {
		got = exit.ExitCode()
	} else if err != nil && !errors.Is(err, os.ErrProcessDone) {
		ts.Fatalf("%v", err)
	}
	if got != want {
		ts.Fatalf("exit code %d, want %d", got, want)
	}
}

// decodeOnly is a program that only decodes the JPEG it is given: the floor that
// the whole job is measured against.
func decodeOnly() {
	data, err := os.ReadFile(os.Args[1])
	if err == nil {
		_, err = jpeg.Decode(bytes.NewReader(data))
	}
	if err != nil {
		fmt.Fprintln(os.Stderr, err)
		os.Exit(1)
	}
}

// tonewrightAndPeak is tonewright that prints, when it is done, the most memory it
// had: Linux counts in a child's usage what its parent had when it was started.
func tonewrightAndPeak() {
	code := run(os.Args[1:], os.Stdout, os.Stderr)
	status, err := os.ReadFile("/proc/self/status")
	if err != nil {
		fmt.Fprintln(os.Stderr, err)
		os.Exit(1)
	}
	for line := range strings.Lines(string(status)) {
		if strings.HasPrefix(line, "VmHWM:") {
			fmt.Print(line)
		}
	}
	os.Exit(code)
}

// What a name holds does not steer the terminal: no codes, no marks that turn the writing.
func TestPlainText(t *testing.T) {
	if got, want := plainText("a\x1b[31m\u202eb\xff\n"), "a?[31m?b?\n"; got != want {
		t.Errorf("%q, want %q", got, want)
	}
}
