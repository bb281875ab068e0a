package view

import (
	"context"
	"encoding/json"
	"testing"

	"steelyard/demo"
	"steelyard/internal/server/api"
)

// BenchmarkDrag is what every move of a finger costs on the server: the slowest
// and the plainest machine of the demo room, as the page asks while dragging.
func BenchmarkDrag(b *testing.B) {
	for _, f := range demo.Machines() {
		for name, look := range map[string]api.Look{
			"band":   {Frames: api.OneFrame, Positions: 61},
			"noband": {Frames: api.OneFrame, Positions: 61, NoBand: true},
		} {
			b.Run(f.Name+"/"+name, func(b *testing.B) {
				for b.Loop() {
					p := Preview(context.Background(), Read(string(f.Data)), look, nil)
					if len(p.Problems) > 0 {
						b.Fatal(p.Problems)
					}
					if _, err := json.Marshal(p); err != nil {
						b.Fatal(err)
					}
				}
			})
		}
	}
}
