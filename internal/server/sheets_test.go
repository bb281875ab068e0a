package server

import (
	"fmt"
	"net/http"
	"strings"
	"testing"

	"steelyard/internal/server/api"
)

func TestDemoRoomComesAndGoes(t *testing.T) {
	d := open(t, t.TempDir())
	var room api.Room
	d.must("GET", "/api/room", nil, &room)
	if len(room.Machines) != 1 || !room.Demo || room.Machines[0].Name != "Demo lever" || room.Machines[0].Sign == nil || room.Machines[0].Loads != "the start" {
		t.Fatalf("%+v", room)
	}
	d.must("POST", "/api/demo", api.Demo{Present: false}, &room)
	if len(room.Machines) != 0 || room.Demo || len(room.Removed) != 1 {
		t.Errorf("taken away: %+v", room)
	}
	d.must("POST", "/api/demo", api.Demo{Present: true}, &room)
	if len(room.Machines) != 1 || !room.Demo || len(room.Removed) != 0 {
		t.Errorf("brought back: %+v", room)
	}
}

// Two pages open one machine. What the second one does not touch is merged;
// what both change is refused, with both versions in the answer.
func TestTwoTabs(t *testing.T) {
	d := open(t, t.TempDir())
	sh := d.create(lever)
	value := func(path, text string) []api.Edit { return []api.Edit{{Value: &api.ValueEdit{Path: path, Text: text}}} }

	var first api.Saved
	d.must("PATCH", "/api/sheets/"+sh.ID, api.Change{Revision: sh.Revision, Edits: value("points.horn.x", "450 ± 4"), Look: &api.Look{}}, &first)
	if first.Merged != "" || first.Sheet.Revision != sh.Revision+1 || first.Preview == nil || first.Preview.Text != first.Sheet.Text {
		t.Fatalf("%+v", first)
	}

	var second api.Saved
	d.must("PATCH", "/api/sheets/"+sh.ID, api.Change{Revision: sh.Revision, Edits: value("loads.plates.mass", "30 kg")}, &second)
	if second.Merged == "" || !strings.Contains(second.Sheet.Text, "450 ± 4") || !strings.Contains(second.Sheet.Text, "mass: 30 kg") {
		t.Errorf("merged: %q, %s", second.Merged, second.Sheet.Text)
	}

	status, p := d.ask("PATCH", "/api/sheets/"+sh.ID, api.Change{Revision: sh.Revision, Edits: value("points.horn.x", "500 ± 4")}, nil)
	if status != http.StatusConflict || p.Code != api.Conflict || p.Current == nil || p.Current.Text != second.Sheet.Text || !strings.Contains(p.Yours, "500 ± 4") {
		t.Errorf("both changed the horn: %d %+v", status, p)
	}
	drag := []api.Edit{{Point: &api.PointDrag{Point: "horn", To: api.Place{0.5, 0}}}}
	if status, _ := d.ask("PATCH", "/api/sheets/"+sh.ID, api.Change{Revision: sh.Revision, Edits: drag}, nil); status != http.StatusConflict {
		t.Errorf("a drag of what was changed: %d", status)
	}

	mine := lever + "# mine\n"
	status, p = d.ask("PUT", "/api/sheets/"+sh.ID, api.Write{Revision: sh.Revision, Text: mine}, nil)
	if status != http.StatusConflict || p.Yours != mine || p.Current == nil || p.Current.Revision != second.Sheet.Revision || !strings.Contains(p.Message, "was not saved") {
		t.Errorf("a whole text: %d %+v", status, p)
	}
	for _, path := range []string{"undo", "redo"} {
		if status, p := d.ask("POST", "/api/sheets/"+sh.ID+"/"+path, api.Step{Revision: sh.Revision}, nil); status != http.StatusConflict || p.Current == nil {
			t.Errorf("%s: %d", path, status)
		}
	}
	if status, _ := d.ask("DELETE", fmt.Sprintf("/api/sheets/%s?revision=%d", sh.ID, sh.Revision), nil, nil); status != http.StatusConflict {
		t.Errorf("remove: %d", status)
	}

	var room api.Room
	d.must("DELETE", fmt.Sprintf("/api/sheets/%s?revision=%d", sh.ID, second.Sheet.Revision), nil, &room)
	if status, p := d.ask("PATCH", "/api/sheets/"+sh.ID, api.Change{Revision: second.Sheet.Revision, Edits: value("points.grip.x", "900")}, nil); status != http.StatusConflict || !p.Current.Removed {
		t.Errorf("a change of what was removed elsewhere: %d %+v", status, p)
	}
}

func TestUndoAfterRestart(t *testing.T) {
	folder := t.TempDir()
	d := open(t, folder)
	sh := d.create(lever)
	for i := range 60 {
		var saved api.Saved
		d.must("PATCH", "/api/sheets/"+sh.ID, api.Change{Revision: sh.Revision, Edits: []api.Edit{{Value: &api.ValueEdit{Path: "points.grip.x", Text: fmt.Sprint(801 + i)}}}}, &saved)
		sh = saved.Sheet
	}
	if sh.Undo != 60 {
		t.Fatalf("%d steps", sh.Undo)
	}
	d = open(t, folder) // the cookie jar is new, so is the program
	for range 60 {
		var saved api.Saved
		d.must("POST", "/api/sheets/"+sh.ID+"/undo", api.Step{Revision: sh.Revision}, &saved)
		sh = saved.Sheet
	}
	if sh.Text != lever || sh.Undo != 0 || sh.Redo != 60 {
		t.Errorf("undone to %q, %d back, %d forth", sh.Text, sh.Undo, sh.Redo)
	}
	if status, p := d.ask("POST", "/api/sheets/"+sh.ID+"/undo", api.Step{Revision: sh.Revision}, nil); status != 400 || !strings.Contains(p.Message, "nothing left to undo") {
		t.Errorf("%d %+v", status, p)
	}
	var saved api.Saved
	d.must("POST", "/api/sheets/"+sh.ID+"/redo", api.Step{Revision: sh.Revision}, &saved)
	if !strings.Contains(saved.Sheet.Text, "grip: [801, 0]") {
		t.Errorf("redone to %q", saved.Sheet.Text)
	}
	var h api.History
	d.must("GET", "/api/sheets/"+sh.ID+"/history", nil, &h)
	if len(h.Revisions) != 122 || h.Revisions[0].What != "redone" || h.Revisions[121].What != "created" {
		t.Errorf("%d revisions, from %s", len(h.Revisions), h.Revisions[0].What)
	}
}

func TestBrokenSheetIsKeptAndTold(t *testing.T) {
	d := open(t, t.TempDir())
	sh := d.create(lever)
	var saved api.Saved
	broken := strings.Replace(lever, "at: grip", "at: gripp", 1)
	d.must("PUT", "/api/sheets/"+sh.ID, api.Write{Revision: sh.Revision, Text: broken, Look: &api.Look{}}, &saved)
	if saved.Sheet.Text != broken || len(saved.Preview.Problems) == 0 || saved.Preview.Problems[0].Line != 12 {
		t.Errorf("%+v", saved.Preview.Problems)
	}
	var room api.Room
	d.must("GET", "/api/room", nil, &room)
	for _, m := range room.Machines {
		if m.ID == sh.ID && (m.Trouble == "" || m.Sign != nil || m.Name != "Lever") {
			t.Errorf("%+v", m)
		}
	}
	if status, p := d.ask("PATCH", "/api/sheets/"+sh.ID, api.Change{Revision: saved.Sheet.Revision, Edits: []api.Edit{{Value: &api.ValueEdit{Path: "points.x.y", Text: "1"}}}}, nil); status != 422 || len(p.Problems) == 0 {
		t.Errorf("%d %+v", status, p)
	}
}

// Names are data: they come back as they were, and go nowhere else.
func TestHostileNames(t *testing.T) {
	d := open(t, t.TempDir())
	for _, name := range []string{"<script>alert(1)</script>", "'; DROP TABLE sheet; --", "../../etc/passwd", "a\\b:c*?\"<>|", "\u202egnp.exe", "سندان", "😀", strings.Repeat("a", 119)} {
		text := strings.Replace(exact, "name: Lever", "name: '"+strings.ReplaceAll(name, "'", "''")+"'", 1)
		sh := d.create(text)
		if sh.Name != name {
			t.Errorf("%q came back as %q", name, sh.Name)
		}
		res, _ := d.raw("/api/sheets/"+sh.ID+"/report/svg", nil)
		if res.StatusCode != 200 || !strings.HasPrefix(res.Header.Get("Content-Disposition"), "attachment") || strings.ContainsAny(res.Header.Get("Content-Disposition"), "/\\<>\r\n") {
			t.Errorf("%q: %d, %q", name, res.StatusCode, res.Header.Get("Content-Disposition"))
		}
	}
	for _, id := range []string{"..", "%2e%2e%2f", "x'%20OR%201=1", strings.Repeat("9", 5000)} {
		if res, _ := d.raw("/api/sheets/"+id, nil); res.StatusCode != 404 {
			t.Errorf("id %.20q: %d", id, res.StatusCode)
		}
	}
}

func TestReadingsAndForgetting(t *testing.T) {
	d := open(t, t.TempDir())
	sh := d.create(lever)
	in := api.ForceReadings{Readings: []api.ForceReading{{Travel: 0.2, Force: 90, Plus: 4, Settings: []api.Choice{{Setting: "plates", Value: "20 kg"}}, Note: "hanging scale, twice"}}}
	var out api.ForceReadings
	d.must("PUT", "/api/sheets/"+sh.ID+"/readings", in, &out)
	if len(out.Readings) != 1 || out.Readings[0].Force != 90 || out.Readings[0].Settings[0].Value != "20 kg" {
		t.Errorf("%+v", out)
	}
	for _, bad := range []api.ForceReading{{Travel: -1}, {Force: 1e9}, {Plus: -1}, {Note: strings.Repeat("a", 2000)}} {
		if status, _ := d.ask("PUT", "/api/sheets/"+sh.ID+"/readings", api.ForceReadings{Readings: []api.ForceReading{bad}}, nil); status != 400 {
			t.Errorf("%+v: %d", bad, status)
		}
	}
	if status, _ := d.ask("PUT", "/api/sheets/nothing/readings", in, nil); status != 404 {
		t.Errorf("of nothing: %d", status)
	}

	if status, _ := d.ask("POST", "/api/sheets/"+sh.ID+"/forget", struct{}{}, nil); status != 404 {
		t.Errorf("forgot what was not removed: %d", status)
	}
	var room api.Room
	d.must("DELETE", fmt.Sprintf("/api/sheets/%s?revision=%d", sh.ID, sh.Revision), nil, &room)
	if len(room.Removed) != 1 {
		t.Fatalf("%+v", room.Removed)
	}
	var saved api.Saved
	d.must("POST", "/api/sheets/"+sh.ID+"/recover", struct{}{}, &saved)
	if saved.Sheet.Text != lever {
		t.Errorf("recovered: %+v", saved)
	}
	d.must("DELETE", fmt.Sprintf("/api/sheets/%s?revision=%d", sh.ID, saved.Sheet.Revision), nil, &room)
	d.must("POST", "/api/sheets/"+sh.ID+"/forget", struct{}{}, &room)
	if status, _ := d.ask("GET", "/api/sheets/"+sh.ID, nil, nil); status != 404 || len(room.Removed) != 0 {
		t.Errorf("forgotten and there: %d", status)
	}
	if status, _ := d.ask("DELETE", "/api/sheets/"+sh.ID, nil, nil); status != 400 {
		t.Errorf("no revision: %d", status)
	}
}
