package sheet

import (
	"strings"
	"testing"
)

// What is added stands at the end of its section, in the section's own style;
// nothing else changes.
func TestGrow(t *testing.T) {
	const head = "steelyard: person 1\nheight: 1.72 m # without shoes\nmass: 68 kg\n"
	knee := Field{"knee flexion", "120 deg"}
	force := []Field{{"action", "elbow flexion"}, {"angle", "90 deg"}, {"force", "170 ± 10 N"}, {"at", "280 mm"}}
	for _, c := range []struct {
		name, text, want string
		limit            bool
	}{
		{"no section", head, head + "limits:\n  knee flexion: 120 deg\n", true},
		{"no newline at the end", strings.TrimSuffix(head, "\n"), head + "limits:\n  knee flexion: 120 deg\n", true},
		{"among others, with comments", head + "limits:   # mine\n    hip flexion: 90 deg  # seen\n\n# next\navoid: [x]\n",
			head + "limits:   # mine\n    hip flexion: 90 deg  # seen\n    knee flexion: 120 deg\n\n# next\navoid: [x]\n", true},
		{"empty section", head + "limits:\navoid: [x]\n", head + "limits:\n  knee flexion: 120 deg\navoid: [x]\n", true},
		{"in braces", head + "limits: {hip flexion: 90 deg} # short\n", head + "limits: {hip flexion: 90 deg, knee flexion: 120 deg} # short\n", true},
		{"lines ended as on Windows", strings.ReplaceAll(head+"limits:\n  hip flexion: 90 deg\n", "\n", "\r\n"),
			strings.ReplaceAll(head+"limits:\n  hip flexion: 90 deg\n  knee flexion: 120 deg\n", "\n", "\r\n"), true},
		{"no list", head, head + "strength:\n  - action: elbow flexion\n    angle: 90 deg\n    force: 170 ± 10 N\n    at: 280 mm\n", false},
		{"a list", head + "strength:\n- lift: Bow press # one\n  load: 40 kg\navoid: [x]\n",
			head + "strength:\n- lift: Bow press # one\n  load: 40 kg\n- action: elbow flexion\n  angle: 90 deg\n  force: 170 ± 10 N\n  at: 280 mm\navoid: [x]\n", false},
		{"a list in brackets", head + "strength: [{lift: Bow press, load: 40 kg}]\n",
			head + "strength: [{lift: Bow press, load: 40 kg}, {action: elbow flexion, angle: 90 deg, force: 170 ± 10 N, at: 280 mm}]\n", false},
	} {
		d, err := Read("p.yaml", []byte(c.text))
		if err != nil {
			t.Fatal(err)
		}
		if c.limit {
			err = d.AddKey("limits", knee)
		} else {
			err = d.AddItem("strength", force)
		}
		if got := string(d.Bytes()); err != nil || got != c.want {
			t.Errorf("%s: %v\n%s\nwant\n%s", c.name, err, got, c.want)
		}
		if _, err := d.Person(); err != nil {
			t.Errorf("%s: %v", c.name, err)
		}
	}
}

func TestGrowExample(t *testing.T) {
	d, err := Read("p.yaml", Example(KindPerson))
	if err != nil {
		t.Fatal(err)
	}
	before := string(d.Bytes())
	if err := d.AddItem("strength", []Field{{"action", "knee flexion"}, {"angle", "30 deg"}, {"moment", "90 Nm"}}); err != nil {
		t.Fatal(err)
	}
	p, err := d.Person()
	if err != nil || len(p.Person.Strength) != 3 {
		t.Errorf("%v, %d strengths", err, len(p.Person.Strength))
	}
	if got := strings.Replace(string(d.Bytes()), "  - action: knee flexion\n    angle: 30 deg\n    moment: 90 Nm\n", "", 1); got != before {
		t.Errorf("something else has changed:\n%s", got)
	}
}

func TestGrowRefuses(t *testing.T) {
	const head = "steelyard: person 1\nheight: 1.72 m\nmass: 68 kg\n"
	for _, c := range []struct{ name, text, key, value, want string }{
		{"there already", head + "limits:\n  knee flexion: 100 deg\n", "knee flexion", "120 deg", `limits has "knee flexion" already`},
		{"nothing", head, "knee flexion", "", "a value is one line of text"},
		{"two lines", head, "knee flexion", "1\n2", "a value is one line of text"},
		{"empty braces", head + "limits: {}\n", "knee flexion", "120 deg", "write it in the sheet's text"},
		{"no mapping", head + "limits: none\n", "knee flexion", "120 deg", "write it in the sheet's text"},
	} {
		d, err := Read("p.yaml", []byte(c.text))
		if err != nil {
			t.Fatal(err)
		}
		err = d.AddKey("limits", Field{c.key, c.value})
		if err == nil || !strings.Contains(err.Error(), c.want) || string(d.Bytes()) != c.text {
			t.Errorf("%s: got %v, want %q\n%s", c.name, err, c.want, d.Bytes())
		}
	}
	// A text that YAML would read otherwise is quoted, and stays itself.
	d, _ := Read("p.yaml", []byte(head))
	if err := d.AddKey("limits", Field{"knee flexion", "120 deg # or so"}); err != nil || d.Text("limits.knee flexion") != "120 deg # or so" {
		t.Errorf("%v: %s", err, d.Bytes())
	}
}
