package view

import (
	"context"
	"encoding/json"
	"testing"

	"steelyard/demo"
	"steelyard/internal/server/api"
)

// Whatever stands in a sheet and whatever is done to it, the page gets an
// answer that JSON can carry: a machine, or what is wrong.
func FuzzPreview(f *testing.F) {
	f.Add(lever, "points.horn.x", "450 ± 4", "horn", 0.5, 0.1, 0.2)
	f.Add(lever, "loads.plates.mass", "0", "grip", -1.0, 1e-9, 1e9)
	for _, m := range demo.Machines() {
		f.Add(string(m.Data), "travel.to", "1 deg", "axle", 0.0, 0.0, 0.1)
	}
	f.Fuzz(func(t *testing.T, text, path, value, point string, x, y, driver float64) {
		if len(text) > 8<<10 {
			return // only slow
		}
		look := api.Look{Positions: 11, Frames: api.AllFrames, Structure: true, Tempo: &api.Tempo{Up: 1, Down: 1}}
		sheet := Read(text)
		for _, e := range []api.Edit{{Value: &api.ValueEdit{Path: path, Text: value}}, {Point: &api.PointDrag{Point: point, To: api.Place{x, y}, Driver: &driver}}} {
			if _, after, err := sheet.Resolve(nil, []api.Edit{e}); err == nil {
				sheet = after
			}
		}
		x1 := Explain(context.Background(), sheet, look, nil)
		if _, err := json.Marshal(x1); err != nil {
			t.Error(err)
		}
		if p := &x1.Preview; (p.Curve == nil) != (len(p.Problems) > 0) {
			t.Errorf("curve %v, problems %+v", p.Curve != nil, p.Problems)
		}
		PersonSheet(sheet)
	})
}
