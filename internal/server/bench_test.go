package server

import (
	"testing"

	"steelyard/demo"
	"steelyard/internal/server/api"
)

// BenchmarkDrag is what a move of a finger costs from the page's request to the
// last byte of the answer, over a real connection: the plainest machine of the
// demo room, one with a traced cam and one of six bars.
func BenchmarkDrag(b *testing.B) {
	for _, f := range demo.Machines() {
		point, ok := map[string]string{"bow-press.yaml": "horn", "feathering-curl.yaml": "grip", "gate-squat.yaml": "horn"}[f.Name]
		if !ok {
			continue
		}
		b.Run(f.Name, func(b *testing.B) {
			d := open(b, b.TempDir())
			sh := d.create(string(f.Data))
			var first api.Preview
			look := api.Look{Structure: true, Positions: 61, Frames: api.OneFrame}
			d.must("POST", "/api/preview", api.Ask{Sheet: sh.ID, Look: look}, &first)
			var from api.Place
			for _, p := range first.Structure.Points {
				if p.Name == point {
					from = p.At
				}
			}
			look.Structure, look.NoBand = false, true
			step := 0
			for b.Loop() {
				step++
				to := api.Place{from[0] + 0.0001*float64(step%100), from[1]}
				d.must("POST", "/api/preview", api.Ask{Sheet: sh.ID, Look: look, Edits: []api.Edit{{Point: &api.PointDrag{Point: point, To: to}}}}, nil)
			}
		})
	}
}
