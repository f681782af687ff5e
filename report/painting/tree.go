// A painting file as a tree of keys and values, each with its line.

package painting

import (
	"cmp"
	"fmt"
	"sort"

	"github.com/pelletier/go-toml/v2"
	"github.com/pelletier/go-toml/v2/unstable"

	"tonewright/report/plan"
)

// table is keys in the order they stand.
type table struct {
	line    int
	entries []*entry
	at      map[string]*entry
	first   string // of a whole file: its first line in brackets, like "[[region]]"; "": none
}

// lineOf returns where a key of the table stands; where it has none, the table.
func (t *table) lineOf(key string) int {
	if e := t.at[key]; e != nil {
		return e.line
	}
	return t.line
}

// entry is a key and what it is set to.
type entry struct {
	key   string
	line  int
	value value
}

// value is what stands behind a key or in a list.
type value struct {
	kind  unstable.Kind // String, Bool, Integer, Float, Array, InlineTable for any table, or that of a date
	line  int
	text  string  // of what is no list and no table, as it stands, text without its quotes
	items []value // of a list
	table *table
}

// kinds says what a value is, in words.
var kinds = map[unstable.Kind]string{
	unstable.String: "text", unstable.Bool: "true or false", unstable.Integer: "a number", unstable.Float: "a number",
	unstable.Array: "a list", unstable.InlineTable: "a table",
}

// what says what the value is, in words.
func (v *value) what() string {
	if word, ok := kinds[v.kind]; ok {
		return word
	}
	return "a date or a time"
}

// mostKeys is the most keys of a painting file, each part of one with dots counted. Ours:
// 25 regions with all their keys have 300 and 200 layers 1600, and as many again stand above
// them as there are paints. The TOML reader holds every key against all others: 30,000 took
// it 4 to 8 s.
const mostKeys = 2500

// parse returns the tree of a TOML text, or what is wrong with its form. file is for
// errors. Every key is there once and no table is written twice.
func parse(file string, text []byte) (*table, error) {
	b := builder{lines: linesOf(text), root: &table{line: 1}}
	b.open = b.root
	b.parser.Reset(text)
	for b.parser.NextExpression() {
		b.add(b.parser.Expression())
		if b.keys > mostKeys {
			return nil, plan.Misused(fmt.Errorf("%s:%d: has more than %d keys up to here; that is no painting file", file, b.line, mostKeys))
		}
	}
	// The parser takes every expression for itself: whether they go together is for the
	// reader to say, and what is wrong with the form of one.
	var form map[string]any
	if err := toml.Unmarshal(text, &form); err != nil {
		return nil, formError(file, err)
	}
	return b.root, nil
}

// builder puts the parser's expressions, one after the other, into a tree.
type builder struct {
	parser unstable.Parser
	lines  []int // where each line after the first begins
	root   *table
	open   *table // the one that keys go into
	keys   int    // parts of keys so far
	line   int    // of the last of them
}

func linesOf(text []byte) (starts []int) {
	for i, c := range text {
		if c == '\n' {
			starts = append(starts, i+1)
		}
	}
	return starts
}

func (b *builder) lineOf(r unstable.Range) int {
	return 1 + sort.SearchInts(b.lines, int(r.Offset)+1)
}

func (b *builder) add(node *unstable.Node) {
	switch node.Kind {
	case unstable.KeyValue:
		b.set(b.open, node)
	case unstable.Table:
		path, line := b.path(node)
		b.open = b.root.within(path, line)
		b.root.first = cmp.Or(b.root.first, "["+bare(path[0])+"]")
	case unstable.ArrayTable:
		path, line := b.path(node)
		last := len(path) - 1
		b.root.first = cmp.Or(b.root.first, "[["+bare(path[0])+"]]")
		e := b.root.within(path[:last], line).entry(path[last], line)
		b.open = &table{line: line}
		e.value.kind = unstable.Array
		e.value.items = append(e.value.items, value{kind: unstable.InlineTable, line: line, table: b.open})
	}
}

// path returns the parts of a key, and its line.
func (b *builder) path(node *unstable.Node) (parts []string, line int) {
	for key := node.Key(); key.Next(); {
		if parts == nil {
			line = b.lineOf(key.Node().Raw)
		}
		parts = append(parts, string(key.Node().Data))
	}
	b.keys, b.line = b.keys+len(parts), line
	return parts, line
}

// set puts a key and its value into a table, into one within it where the key has dots.
func (b *builder) set(t *table, node *unstable.Node) {
	path, line := b.path(node)
	last := len(path) - 1
	e := t.within(path[:last], line).entry(path[last], line)
	e.value = b.value(node.Value(), line)
}

// value returns what a node holds; one that does not know its own place stands on line.
func (b *builder) value(node *unstable.Node, line int) value {
	if node.Raw.Length > 0 {
		line = b.lineOf(node.Raw)
	}
	v := value{kind: node.Kind, line: line}
	switch node.Kind {
	case unstable.Array:
		for each := node.Children(); each.Next(); {
			v.items = append(v.items, b.value(each.Node(), line))
		}
		if len(v.items) > 0 {
			v.line = v.items[0].line
		}
	case unstable.InlineTable:
		v.table = &table{line: line}
		for each := node.Children(); each.Next(); {
			b.set(v.table, each.Node())
		}
	default:
		v.text = string(node.Data)
	}
	return v
}

// blocks returns the tables of a list that is written as [[name]].
func (v *value) blocks(name string) (tables []*table, err error) {
	for _, item := range v.items {
		if item.table != nil {
			tables = append(tables, item.table)
		}
	}
	if v.kind != unstable.Array || len(tables) != len(v.items) {
		return nil, fmt.Errorf("is written as [[%s]] on a line of its own, with its keys on the lines below", name)
	}
	return tables, nil
}

// within returns the table that a path of keys leads to, made where it is not there; of
// a list of tables the last.
func (t *table) within(path []string, line int) *table {
	for _, part := range path {
		e := t.entry(part, line)
		if n := len(e.value.items); n > 0 && e.value.items[n-1].table != nil {
			t = e.value.items[n-1].table
			continue
		}
		if e.value.table == nil {
			e.value = value{kind: unstable.InlineTable, line: line, table: &table{line: line}}
		}
		t = e.value.table
	}
	return t
}

// entry returns the entry of a key, made where it is not there.
func (t *table) entry(key string, line int) *entry {
	if e := t.at[key]; e != nil {
		return e
	}
	e := &entry{key: key, line: line, value: value{line: line}}
	if t.at == nil {
		t.at = map[string]*entry{}
	}
	t.at[key] = e
	t.entries = append(t.entries, e)
	return e
}
