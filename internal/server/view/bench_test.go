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

// BenchmarkPerson is what opening a machine with somebody on it costs on the
// server: every demo machine that has a station, as the page asks once a change
// is kept.
func BenchmarkPerson(b *testing.B) {
	people := demo.People()
	for _, f := range demo.Machines() {
		for _, who := range people {
			person, err := Person(who.Name, string(who.Data))
			if err != nil {
				b.Fatal(err)
			}
			look := api.Look{Frames: api.AllFrames, Positions: 101, Structure: true}
			if p := Preview(context.Background(), Read(string(f.Data)), look, person); p.Person == nil {
				continue // no station, or out of reach
			}
			b.Run(f.Name+"/"+person.Name, func(b *testing.B) {
				for b.Loop() {
					if _, err := json.Marshal(Preview(context.Background(), Read(string(f.Data)), look, person)); err != nil {
						b.Fatal(err)
					}
				}
			})
		}
	}
}
