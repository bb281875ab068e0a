package demo

import (
	"maps"
	"os"
	"regexp"
	"slices"
	"strings"
	"testing"
)

// TestNoNameOfAnybody wants no capital within a sentence but those below, so that
// no maker, person or place can slip in.
func TestNoNameOfAnybody(t *testing.T) {
	allowed := map[string]bool{"N": true, "MPa": true, "Nm": true, "A": true, "B": true, "C": true, "D": true, "E": true,
		"Watt": true, "Stephenson": true, "Sculler": true} // six-bars are called after the first two; the third names a machine
	inside := regexp.MustCompile(`[a-z0-9,;)] ([A-Z]\w*)`)
	opening := regexp.MustCompile(`(?m)^ *(name|notes|measured|- )[: ] *(>-|\||#)?|^# |: \{?|  #`) // a sentence may begin after it
	for _, f := range Machines() {
		text := strings.Join(strings.Fields(opening.ReplaceAllString(string(f.Data), ". ")), " ")
		for _, found := range inside.FindAllStringSubmatch(text, -1) {
			if !allowed[found[1]] {
				t.Errorf("%s: %q has a capital; is it a name?", f.Name, found[0])
			}
		}
		if strings.ContainsAny(text, "®™©") {
			t.Errorf("%s: has a mark of a maker", f.Name)
		}
	}
}

// TestReadmeListsTheRoom holds the table of the README against the sheets.
func TestReadmeListsTheRoom(t *testing.T) {
	readme, err := os.ReadFile("README.md")
	if err != nil {
		t.Fatal(err)
	}
	listed := map[string]int{}
	for _, row := range regexp.MustCompile(`(?m)^\| \[[^\]]+\]\(machines/([a-z-]+\.yaml)\) \|`).FindAllSubmatch(readme, -1) {
		listed[string(row[1])]++
	}
	for _, f := range Machines() {
		if listed[f.Name] != 1 {
			t.Errorf("%s stands %d times in the README's table, want once", f.Name, listed[f.Name])
		}
		delete(listed, f.Name)
	}
	for _, name := range slices.Sorted(maps.Keys(listed)) {
		t.Errorf("the README lists %s, which is not there", name)
	}
}
