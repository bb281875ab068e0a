package sheet

import (
	"strings"
	"testing"
)

// TestPersonExplained wants each thing told where it belongs: the measured as
// understood, the filled-in as assumed, the missing as missing.
func TestPersonExplained(t *testing.T) {
	full, err := personFrom(t, string(Example(KindPerson)))
	if err != nil {
		t.Fatal(err)
	}
	bare, err := personFrom(t, "steelyard: person 1\nheight: 1.8 m\nmass: 80 kg\n")
	if err != nil {
		t.Fatal(err)
	}
	for _, c := range []struct {
		who  *Person
		of   func(Explanation) []string
		want string
	}{
		{full, func(e Explanation) []string { return e.Understood }, "upper arm 318±5 mm (measured)"},
		{full, func(e Explanation) []string { return e.Understood }, "knee extension gives 165 N·m at 60°"},
		{full, func(e Explanation) []string { return e.Understood }, "deep bends"},
		{full, func(e Explanation) []string { return e.Assumed }, "sitting height"},
		{bare, func(e Explanation) []string { return e.Missing }, "the sex is not given"},
		{bare, func(e Explanation) []string { return e.Missing }, "no strength was measured"},
		{bare, func(e Explanation) []string { return e.Assumed }, "upper arm"},
	} {
		e, err := c.who.Explain()
		if err != nil {
			t.Fatal(err)
		}
		if lines := strings.Join(c.of(e), "\n"); !strings.Contains(lines, c.want) {
			t.Errorf("want %q among:\n%s", c.want, lines)
		}
	}
}
