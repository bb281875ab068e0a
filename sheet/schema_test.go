package sheet

import (
	"bytes"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"github.com/goccy/go-yaml"
	"github.com/santhosh-tekuri/jsonschema/v6"
)

func compiledSchema(t *testing.T) *jsonschema.Schema {
	t.Helper()
	doc, err := jsonschema.UnmarshalJSON(bytes.NewReader(Schema(KindMachine)))
	if err != nil {
		t.Fatal(err)
	}
	c := jsonschema.NewCompiler()
	if err := c.AddResource("machine.json", doc); err != nil {
		t.Fatal(err)
	}
	s, err := c.Compile("machine.json") // checks it against the draft's own schema too
	if err != nil {
		t.Fatal(err)
	}
	return s
}

// asJSON reads a sheet the way an editor would, not the way this package does.
func asJSON(t *testing.T, data []byte) any {
	t.Helper()
	var v any
	if err := yaml.Unmarshal(data, &v); err != nil {
		t.Fatal(err)
	}
	text, err := yaml.MarshalWithOptions(v, yaml.JSON())
	if err != nil {
		t.Fatal(err)
	}
	out, err := jsonschema.UnmarshalJSON(bytes.NewReader(text))
	if err != nil {
		t.Fatal(err)
	}
	return out
}

// goodSheets returns the example and the test sheets.
func goodSheets(t testing.TB) map[string][]byte {
	t.Helper()
	out := map[string][]byte{"example": Example(KindMachine)}
	files, err := filepath.Glob("testdata/*.yaml")
	if err != nil || len(files) < 4 {
		t.Fatalf("got %d sheets, %v", len(files), err)
	}
	for _, file := range files {
		data, err := os.ReadFile(file)
		if err != nil {
			t.Fatal(err)
		}
		out[filepath.Base(file)] = data
	}
	return out
}

func TestSchemaTakesGoodSheets(t *testing.T) {
	s := compiledSchema(t)
	for name, data := range goodSheets(t) {
		if err := s.Validate(asJSON(t, data)); err != nil {
			t.Errorf("%s: %v", name, err)
		}
	}
}

// TestSchemaKnowsTheKeysOfTheReader puts an unknown key into every group of
// every good sheet: the schema has to refuse it, and the reader has to name
// only keys that the schema also knows.
func TestSchemaKnowsTheKeysOfTheReader(t *testing.T) {
	s := compiledSchema(t)
	groups := 0
	for name, data := range goodSheets(t) {
		d, err := Read(name, data)
		if err != nil {
			t.Fatal(err)
		}
		for _, g := range groupsOf(d.root) {
			text := withKeyAt(data, g, "zzzzzzzzzz: 1")
			changed, err := Read(name, text)
			if err != nil {
				t.Fatalf("%s: %s: %v", name, g.path, err)
			}
			_, err = changed.Machine()
			refused := err != nil && strings.Contains(err.Error(), `has a key "zzzzzzzzzz", but it knows`)
			invalid := s.Validate(asJSON(t, text)) != nil
			if refused != invalid {
				t.Errorf("%s: unknown key in %q: reader refuses %v, schema refuses %v; %v", name, g.path, refused, invalid, err)
			}
			if !refused {
				continue
			}
			groups++
			for _, key := range knownKeys(t, err) {
				if !bytes.Contains(Schema(KindMachine), []byte(`"`+key+`"`)) {
					t.Errorf("%s: the reader knows %q in %q, the schema does not", name, key, g.path)
				}
			}
		}
	}
	if groups < 60 {
		t.Errorf("tried %d groups of keys, want 60 or more", groups)
	}
}

// groupsOf returns the mappings of fixed keys: those whose keys writers choose
// take any.
func groupsOf(n *node) []*node {
	chosen := []string{"points", "links", "pins", "slides", "sheaves", "cams", "ropes", "loads", "settings"}
	var out []*node
	if n.kind == mapping && !slices.Contains(chosen, n.path) && !strings.Contains(n.path, ".values") {
		out = append(out, n)
	}
	for _, e := range n.entries {
		out = append(out, groupsOf(e.value)...)
	}
	for _, item := range n.items {
		out = append(out, groupsOf(item)...)
	}
	return out
}

// withKeyAt writes a key in front of the first key of a group.
func withKeyAt(data []byte, g *node, key string) []byte {
	lines := bytes.SplitAfter(data, []byte("\n"))
	line := string(lines[g.line-1])
	before, after := []rune(line)[:g.column-1], []rune(line)[g.column-1:]
	glue := ", "
	if strings.TrimSpace(string(before)) == "" {
		glue = "\n" + string(before)
	}
	lines[g.line-1] = []byte(string(before) + key + glue + string(after))
	return bytes.Join(lines, nil)
}

// knownKeys takes the keys out of "…, but it knows a, b and c; …".
func knownKeys(t *testing.T, err error) []string {
	t.Helper()
	_, rest, ok := strings.Cut(err.Error(), `"zzzzzzzzzz", but it knows `)
	list, _, ok2 := strings.Cut(rest, ";")
	if !ok || !ok2 {
		t.Fatalf("no list of keys in %v", err)
	}
	return strings.Split(strings.ReplaceAll(list, " and ", ", "), ", ")
}
