package sheet

import (
	"encoding/json"
	"fmt"
	"reflect"
	"slices"
	"testing"

	"steelyard/mechanism"
)

// TestEveryFieldIsReachable expects the good sheets together to set every field
// of a mechanism.Machine, and to use every kind of force law.
func TestEveryFieldIsReachable(t *testing.T) {
	set := map[string]bool{}
	for _, data := range goodSheets(t) {
		m := mustMachine(t, data)
		noteFields(reflect.ValueOf(mustBuild(t, m, nil).Machine), "", set)
	}
	for _, law := range []any{mechanism.Spring{}, mechanism.GasSpring{}, mechanism.Band{}, mechanism.Table{}, mechanism.Steady{}, mechanism.Damper{}} {
		if name := fmt.Sprintf("%T", law); !set[name] {
			t.Errorf("no sheet makes a %s", name)
		}
	}
	for name, filled := range set {
		if !filled {
			t.Errorf("no sheet sets %s", name)
		}
	}
	if len(set) < 70 {
		t.Errorf("looked at %d fields, want 70 or more", len(set))
	}
}

// noteFields notes for each field under v whether it was ever other than zero.
func noteFields(v reflect.Value, name string, set map[string]bool) {
	switch {
	case v.Kind() == reflect.Interface && !v.IsNil() && v.Type() == reflect.TypeFor[mechanism.Law]():
		set[v.Elem().Type().String()] = true
		noteFields(v.Elem(), v.Elem().Type().String(), set)
	case v.Kind() == reflect.Slice && v.Type().Elem().Kind() == reflect.Struct:
		for i := range v.Len() {
			noteFields(v.Index(i), name, set)
		}
	case v.Kind() == reflect.Struct && v.Type().PkgPath() == reflect.TypeFor[mechanism.Machine]().PkgPath():
		for i := range v.NumField() {
			noteFields(v.Field(i), name+"."+v.Type().Field(i).Name, set)
		}
	default:
		set[name] = set[name] || !v.IsZero()
	}
}

// TestEveryKeyOfTheSchemaIsUsed expects each key the schema offers in some good
// sheet, which the reader takes.
func TestEveryKeyOfTheSchemaIsUsed(t *testing.T) {
	var schema any
	if err := json.Unmarshal(Schema(KindMachine), &schema); err != nil {
		t.Fatal(err)
	}
	used := map[string]bool{}
	for name, data := range goodSheets(t) {
		d, err := Read(name, data)
		if err != nil {
			t.Fatal(err)
		}
		noteKeys(d.root, used)
	}
	keys := schemaKeys(schema)
	for _, key := range keys {
		if !used[key] {
			t.Errorf("no good sheet uses %q", key)
		}
	}
	if len(keys) < 90 {
		t.Errorf("the schema has %d keys, want 90 or more", len(keys))
	}
}

func noteKeys(n *node, used map[string]bool) {
	for _, e := range n.entries {
		used[e.key] = true
		noteKeys(e.value, used)
	}
	for _, item := range n.items {
		noteKeys(item, used)
	}
}

func schemaKeys(v any) []string {
	var out []string
	switch v := v.(type) {
	case map[string]any:
		for key, inner := range v {
			if properties, ok := inner.(map[string]any); ok && key == "properties" {
				for name := range properties {
					out = append(out, name)
				}
			}
			out = append(out, schemaKeys(inner)...)
		}
	case []any:
		for _, inner := range v {
			out = append(out, schemaKeys(inner)...)
		}
	}
	slices.Sort(out)
	return slices.Compact(out)
}

// TestHowANumberWasMeasured expects the note beside a number to come along.
func TestHowANumberWasMeasured(t *testing.T) {
	b := mustBuild(t, mustMachine(t, goodSheets(t)["cam-curl.yaml"]), nil)
	for _, m := range b.Measurements {
		if m.Path == "links.arm.mass.is" {
			if m.How != "hanging scale" || m.Value != 4 || m.Spread != 0.2 || m.String() != "arm, mass = 4±0.2 kg" {
				t.Errorf("got %+v, %v", m, m)
			}
			return
		}
	}
	t.Error("the arm's mass is not among the measurements")
}
