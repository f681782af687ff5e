// Tonewright makes a paint plan from a photo, for painters in oils who cannot
// trust their eyes for colour.
package main

import (
	"errors"
	"fmt"
	"io"
	"os"
	"strings"
	"unicode"

	"tonewright/report/plan"
)

// version is set by the linker for a release.
var version = "0.4.0"

func main() { os.Exit(run(os.Args[1:], os.Stdout, os.Stderr)) }

// Exit codes: done, could not, wrong usage.
const (
	done = iota
	couldNot
	misused
)

// usage says what the program does and lists its commands.
func usage() string {
	var b strings.Builder
	b.WriteString("tonewright makes a paint plan from a photo, and says what paint will do.\n\nUsage:\n")
	for _, c := range commands {
		fmt.Fprintf(&b, "  tonewright %-22s %s\n", c.name+" "+c.args, c.does)
	}
	fmt.Fprintf(&b, "  tonewright %-22s %s\n", "version", "the version")
	b.WriteString("\nEach command tells more with --help.\n")
	return b.String()
}

func run(args []string, out, errs io.Writer) int {
	if len(args) == 0 {
		fmt.Fprint(errs, usage())
		return misused
	}
	var names []string
	for _, c := range commands {
		if args[0] == c.name {
			return finish(errs, c.run(args[1:], out, errs))
		}
		names = append(names, c.name)
	}
	switch args[0] {
	case "version", "--version":
		fmt.Fprintln(out, "tonewright", version)
		return done
	case "help", "--help", "-h":
		fmt.Fprint(out, usage())
		return done
	}
	return finish(errs, usageError("%q is not a command: the commands are %s and version", args[0], strings.Join(names, ", ")))
}

// finish says what went wrong, if anything, in one sentence, and returns the
// exit code for it.
func finish(errs io.Writer, err error) int {
	if err == nil {
		return done
	}
	fmt.Fprintf(errs, "tonewright: %s\n", oneLine(err.Error()))
	if _, ok := errors.AsType[plan.UsageError](err); ok {
		return misused
	}
	return couldNot
}

func usageError(format string, args ...any) error {
	return plan.Misused(fmt.Errorf(format, args...))
}

// oneLine keeps what a file's name may hold from breaking up the message.
func oneLine(text string) string { return strings.ReplaceAll(plainText(text), "\n", "?") }

// plainText keeps what names and files may hold from steering the terminal: control
// codes, but for ends of lines, and marks that turn the direction of writing.
func plainText(text string) string {
	return strings.Map(func(r rune) rune {
		if r != '\n' && unicode.In(r, unicode.Cc, unicode.Cf) {
			return '?'
		}
		return r
	}, strings.ToValidUTF8(text, "?"))
}
