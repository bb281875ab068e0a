package server

import (
	"math"
	"strings"
	"testing"

	"steelyard/internal/server/api"
)

// Every family builds a machine that works as it is, and from its own usual
// answers too.
func TestFamiliesBuildMachines(t *testing.T) {
	d := open(t, t.TempDir())
	var all api.Families
	d.must("GET", "/api/families", nil, &all)
	if len(all.Families) < 5 {
		t.Fatalf("%d families", len(all.Families))
	}
	for _, f := range all.Families {
		var p api.Preview
		d.must("POST", "/api/families/"+f.ID, api.Build{Name: "Mine"}, &p)
		if len(p.Problems) > 0 || p.Curve == nil || p.Name != "Mine" {
			t.Errorf("%s as it is: %+v", f.ID, p.Problems)
		}
		in := api.Build{Name: "Mine", Measured: "phone photo", Look: api.Look{Structure: true}}
		for _, q := range f.Points {
			in.Points = append(in.Points, api.NamedPlace{Name: q.Name, At: q.Usual, Plus: api.Place{0.005, 0.005}})
		}
		for _, q := range f.Values {
			in.Values = append(in.Values, api.NamedNumber{Name: q.Name, Value: q.Usual})
		}
		d.must("POST", "/api/families/"+f.ID, in, &p)
		if len(p.Problems) > 0 || p.Curve == nil || p.Structure == nil {
			t.Errorf("%s with its usual answers: %+v", f.ID, p.Problems)
			continue
		}
		for _, pt := range p.Structure.Points {
			for _, q := range f.Points {
				if q.Name == pt.Name && math.Hypot(pt.At[0]-q.Usual[0], pt.At[1]-q.Usual[1]) > 1e-3 {
					t.Errorf("%s: %s is at %v, was answered %v", f.ID, q.Name, pt.At, q.Usual)
				}
			}
		}
		if p.Band == nil {
			t.Errorf("%s: the ± of the photo made no band", f.ID)
		}
	}
}

func TestRefusedAnswers(t *testing.T) {
	d := open(t, t.TempDir())
	for _, c := range []struct {
		name, id string
		in       api.Build
		want     int
	}{
		{"no such family", "boat", api.Build{}, 404},
		{"a number nobody asked for", "lever", api.Build{Values: []api.NamedNumber{{Name: "boat"}}}, 400},
		{"a point nobody asked for", "lever", api.Build{Points: []api.NamedPlace{{Name: "boat"}}}, 422},
		{"far away", "lever", api.Build{Points: []api.NamedPlace{{Name: "axle", At: api.Place{1e9, 0}}}}, 422},
		{"a very long name", "lever", api.Build{Name: strings.Repeat("a", 5000)}, 400},
	} {
		if status, p := d.ask("POST", "/api/families/"+c.id, c.in, nil); status != c.want {
			t.Errorf("%s: %d %+v, want %d", c.name, status, p, c.want)
		}
	}
}
