package tonewright_test

import (
	"go/parser"
	"go/token"
	"io/fs"
	"os"
	"path/filepath"
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// mayImport is the import table of DEVELOPERS.md: which of our packages each of
// our packages may import. Tests may import more.
var mayImport = map[string][]string{
	"analyze/colour":  {},
	"analyze":         {"analyze/colour"},
	"grid":            {},
	"match/paint":     {"analyze/colour"},
	"match/fit":       {},
	"match/tube":      {"analyze/colour", "match/fit", "match/paint"},
	"match/layer":     {"match/paint"},
	"match":           {"analyze/colour", "match/fit", "match/paint"},
	"report/plan":     {"analyze", "analyze/colour", "grid", "match", "match/layer", "match/paint"},
	"report/painting": {"analyze/colour", "grid", "match", "match/layer", "match/paint", "report/plan"},
	"report/answer":   {"analyze", "analyze/colour", "grid", "match", "match/paint", "match/tube", "report/plan"},
	"report/sheet":    {"analyze", "analyze/colour", "grid", "report/plan"},
	"report":          {"analyze", "analyze/colour", "grid", "report/answer", "report/plan"},
	"cmd/tonewright":  {"analyze/colour", "grid", "match", "match/layer", "match/paint", "report", "report/answer", "report/painting", "report/plan", "report/sheet"},
	"testdata/scene":  {"analyze/colour", "match/paint"},
}

// The files are read here, not through the go command, whose answer the test
// cache would keep after a rule is broken.
func TestImportsPointOneWay(t *testing.T) {
	seen := map[string]bool{}
	for _, file := range goFiles(t) {
		folder := filepath.ToSlash(filepath.Dir(file))
		if strings.HasSuffix(file, "_test.go") {
			continue
		}
		allowed, known := mayImport[folder]
		require.True(t, known, "%s: folder %s is not in the import table", file, folder)
		seen[folder] = true
		parsed, err := parser.ParseFile(token.NewFileSet(), file, nil, parser.ImportsOnly)
		require.NoError(t, err)
		for _, i := range parsed.Imports {
			path, err := strconv.Unquote(i.Path.Value)
			require.NoError(t, err)
			if ours, ok := strings.CutPrefix(path, "tonewright/"); ok {
				assert.Contains(t, allowed, ours, "%s imports %s", file, path)
			}
		}
	}
	for folder := range mayImport {
		assert.True(t, seen[folder], "%s is in the import table but has no files", folder)
	}
}

// No package is named for having no idea of its own.
func TestNoCatchAllPackages(t *testing.T) {
	for _, file := range goFiles(t) {
		for _, word := range []string{"util", "utils", "common", "helpers", "types", "model"} {
			assert.NotContains(t, strings.Split(filepath.ToSlash(filepath.Dir(file)), "/"), word, file)
		}
	}
}

func goFiles(t *testing.T) []string {
	var files []string
	err := filepath.WalkDir(".", func(path string, d fs.DirEntry, err error) error {
		if err != nil {
			return err
		}
		if d.IsDir() && strings.HasPrefix(d.Name(), ".") && path != "." {
			return filepath.SkipDir
		}
		if strings.HasSuffix(path, ".go") && filepath.Dir(path) != "." {
			files = append(files, path)
		}
		return nil
	})
	require.NoError(t, err)
	require.NotEmpty(t, files)
	return files
}

// The README states no command that is not run in the tests or in CI.
func TestReadmeCommands(t *testing.T) {
	readme, err := os.ReadFile("README.md")
	require.NoError(t, err)
	assert.Contains(t, string(readme), "go test ./...")
	assert.Contains(t, string(readme), "go run ./cmd/tonewright plan testdata/kettle.jpg")
}
