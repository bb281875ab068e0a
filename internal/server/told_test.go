package server

import (
	"net/http"
	"strings"
	"testing"

	"steelyard/internal/server/api"
)

const somebody = "steelyard: person 1\nname: Rower\nheight: 1.72 m\nmass: 68 kg\n"

// One machine that is stored no more leaves the comparison of the rest.
func TestCompareWithoutOneGone(t *testing.T) {
	d := open(t, t.TempDir())
	sh := d.create(lever)
	var c api.Comparison
	d.must("POST", "/api/compare", api.Compare{Items: []api.Compared{{Sheet: "no-such-sheet"}, {Sheet: sh.ID}}}, &c)
	if len(c.Items) != 2 || !c.Items[0].Gone || c.Items[1].Gone || c.Items[1].Readings == nil {
		t.Errorf("%+v", c.Items)
	}
}

// The room stays for a person while it changes, and for nobody once they are
// gone.
func TestRoomForAPerson(t *testing.T) {
	d := open(t, t.TempDir())
	who, machine := d.create(somebody), d.create(lever)
	for _, ask := range []struct {
		method, path string
		in           any
	}{
		{"GET", "/api/room?person=" + who.ID, nil},
		{"POST", "/api/demo?person=" + who.ID, api.Demo{Present: true}},
	} {
		var room api.Room
		d.must(ask.method, ask.path, ask.in, &room)
		for _, m := range room.Machines {
			if m.ID == machine.ID && m.Fit == nil {
				t.Errorf("%s %s: no fit", ask.method, ask.path)
			}
		}
	}
	var room api.Room
	d.must("GET", "/api/room?person=no-such-person", nil, &room)
	if len(room.Machines) == 0 || room.Machines[0].Fit != nil {
		t.Errorf("for somebody who is gone: %+v", room.Machines)
	}
}

// A person's sheet takes a strength and a limit; what cannot be used is told
// without file and line in the words.
func TestPersonTakesWhatWasMeasured(t *testing.T) {
	d := open(t, t.TempDir())
	var s api.PersonSheet
	ask := api.AskPerson{Text: somebody, Strength: &api.NewStrength{Motion: "knee extension", Angle: "60 deg", Moment: "150 Nm"}, Limit: &api.NewLimit{Motion: "knee flexion", Angle: "120 deg"}}
	d.must("POST", "/api/person", ask, &s)
	if want := somebody + "strength:\n  - action: knee extension\n    angle: 60 deg\n    moment: 150 Nm\nlimits:\n  knee flexion: 120 deg\n"; s.Text != want || len(s.Problems) > 0 {
		t.Errorf("%+v\n%s", s.Problems, s.Text)
	}
	again := api.AskPerson{Text: s.Text, Limit: ask.Limit}
	status, p := d.ask("POST", "/api/person", again, nil)
	if status != http.StatusUnprocessableEntity || strings.Contains(p.Message, "the sheet:") || !strings.Contains(p.Message, `limits has "knee flexion" already`) {
		t.Errorf("twice the same limit: %d %+v", status, p)
	}
}
