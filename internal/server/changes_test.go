package server

import (
	"fmt"
	"net/http"
	"slices"
	"strings"
	"testing"

	"steelyard/internal/server/api"
	"steelyard/internal/store"
)

// Each row is a lever before and after one change, and how the change is told.
// The words for numbers are the sheet's own, the units those it is read in.
func TestChangesAreTold(t *testing.T) {
	for _, c := range []struct {
		name, from, to string
		want           []string
	}{
		{"a length without unit", "400 ± 4", "455 ± 4", []string{"horn, forward: 400 → 455 ± 4 mm"}},
		{"a length with unit", "horn: [400 ± 4", "horn: [17 1/2 in ± 4", []string{"horn, forward: 400 → 17 1/2 in ± 4"}},
		{"its ± alone", "400 ± 4", "400 ± 2", []string{"horn, forward: 400 ± 4 → 400 ± 2 mm"}},
		{"a mass", "20 kg}\nc", "30 kg}\nc", []string{"plates, mass: 20 → 30 kg"}},
		{"an angle", "90 deg", "75 deg", []string{"travel, to: 90 → 75 deg"}},
		{"the name", "name: Lever", "name: Long lever", []string{"name: Lever → Long lever"}},
		{"a point put in", "  grip: [800, 0]", "  grip: [800, 0]\n  stop: [100, 5]", []string{"stop, forward: 100 put in", "stop, up: 5 put in"}},
		{"a comment", "steelyard: machine 1", "steelyard: machine 1 # ours", []string{"comments or the order of the text"}},
		{"no sheet any more", "name: Lever", "name: [", []string{"the text, which could not be read as a sheet before or after"}},
		{"nothing", "name: Lever", "name: Lever", []string{}},
	} {
		t.Run(c.name, func(t *testing.T) {
			after := strings.Replace(lever, c.from, c.to, 1)
			got := steps([]store.Revision{{Number: 2, What: "changed", Text: after}, {Number: 1, What: "created", Text: lever}})
			if len(got) != 2 || !slices.Equal(got[0].Changes, c.want) {
				t.Errorf("got %q, want %q", got[0].Changes, c.want)
			}
			if !got[0].Now || got[1].Now != (after == lever) || len(got[1].Changes) != 0 {
				t.Errorf("%+v", got)
			}
		})
	}
}

func TestManyChangesOfOneStep(t *testing.T) {
	var points strings.Builder
	for i := range 10 {
		fmt.Fprintf(&points, "  p%d: [1, 2]\n", i)
	}
	after := strings.Replace(lever, "links:", points.String()+"links:", 1)
	got := differences(leavesOf(document(lever)), leavesOf(document(after)), namesOf(document(after)))
	if len(got) != mostLines || got[mostLines-1] != "and 15 more" { // 10 points have 20 numbers
		t.Errorf("%q", got)
	}
}

func TestGoingBackToAStep(t *testing.T) {
	d := open(t, t.TempDir())
	sh := d.create(lever)
	for _, x := range []string{"450 ± 4", "500 ± 4"} {
		var saved api.Saved
		edit := []api.Edit{{Value: &api.ValueEdit{Path: "points.horn.x", Text: x}}}
		d.must("PATCH", "/api/sheets/"+sh.ID, api.Change{Revision: sh.Revision, Edits: edit}, &saved)
		sh = saved.Sheet
	}
	res, data := d.raw("/api/sheets/"+sh.ID+"/history/2", nil)
	text := string(data)
	if want := strings.Replace(lever, "400 ± 4", "450 ± 4", 1); text != want || res.Header.Get("Content-Type") != api.YAML {
		t.Fatalf("step 2 was %q", text)
	}
	d.must("PUT", "/api/sheets/"+sh.ID, api.Write{Revision: sh.Revision, Text: text}, &api.Saved{})
	var c api.Changes
	d.must("GET", "/api/sheets/"+sh.ID+"/changes", nil, &c)
	var told []string
	for _, x := range c.Steps {
		told = append(told, fmt.Sprint(x.Revision, " ", x.What, " ", x.Changes, " ", x.Now))
	}
	want := []string{"4 gone back [horn, forward: 500 → 450 ± 4 mm] true", "3 changed [horn, forward: 450 → 500 ± 4 mm] false",
		"2 changed [horn, forward: 400 → 450 ± 4 mm] true", "1 created [] false"}
	if !slices.Equal(told, want) || c.Older {
		t.Errorf("got  %q\nwant %q", told, want)
	}
	for _, path := range []string{"/history/9", "/history/two"} {
		if status, p := d.ask("GET", "/api/sheets/"+sh.ID+path, nil, nil); status != http.StatusNotFound || p.Code != api.NotFound {
			t.Errorf("%s: %d %+v", path, status, p)
		}
	}
	if status, _ := d.ask("GET", "/api/sheets/none/changes", nil, nil); status != http.StatusNotFound {
		t.Errorf("no such sheet: %d", status)
	}
}

// Only the latest steps are listed; the oldest of them is told too.
func TestChangesOfManySteps(t *testing.T) {
	var all []store.Revision
	for i := mostHistory + 1; i >= 1; i-- {
		all = append(all, store.Revision{Number: i, What: "changed", Text: strings.Replace(lever, "800", fmt.Sprint(800+i), 1)})
	}
	got := steps(all)
	last := got[len(got)-1]
	if len(got) != mostHistory || last.Revision != 2 || !slices.Equal(last.Changes, []string{"grip, forward: 801 → 802 mm"}) {
		t.Errorf("%d steps, the last %+v", len(got), last)
	}
}

func BenchmarkChanges(b *testing.B) {
	var all []store.Revision
	for i := range mostHistory {
		all = append(all, store.Revision{Number: i, Text: strings.Replace(lever, "800", fmt.Sprint(800+i), 1)})
	}
	for b.Loop() {
		steps(all)
	}
}
