package view

import (
	"context"
	"encoding/json"
	"math"
	"strings"
	"testing"

	"steelyard/demo"
	"steelyard/internal/server/api"
	"steelyard/mechanism"
	"steelyard/planar"
)

// lever is a level arm on an axle at the origin: plates 0.4 m out, the hand
// 0.8 m out, raised by 90°.
const lever = `steelyard: machine 1
name: Lever
points:
  axle: [0, 0]
  horn: [400 ± 4, 0]
  grip: [800, 0]
links:
  ground: [axle]
  arm: [axle, horn, grip]
loads:
  plates: {kind: plates, at: horn, mass: 20 kg}
contact: {kind: grip, at: grip, name: hand}
travel: {turn: arm, from: 0 deg, to: 90 deg}
settings:
  plates: {sets: loads.plates.mass, range: {from: 0 kg, to: 50 kg, step: 2.5 kg}, default: 20 kg}
  handle: {moves: {points: [grip], along: [axle, grip]}, values: {near: 0 mm, far: 100 mm}}
`

func preview(t *testing.T, text string, look api.Look) api.Preview {
	t.Helper()
	p := Preview(context.Background(), Read(text), look, nil)
	if len(p.Problems) > 0 {
		t.Fatalf("%+v", p.Problems)
	}
	return p
}

func near(t *testing.T, what string, got, want, within float64, unit string) {
	t.Helper()
	if !(math.Abs(got-want) <= within) {
		t.Errorf("%s: got %g %s, want %g, off by %g", what, got, unit, want, got-want)
	}
}

// At the angle φ above level the plates hang 0.4 m·cos φ in front of the axle,
// so the hand, 0.8 m from it, holds 20 kg·g·cos φ/2; the arc is 0.8 m·φ long.
func TestLeverFrames(t *testing.T) {
	p := preview(t, lever, api.Look{Frames: api.AllFrames, Positions: 91})
	if len(p.Frames) != 91 || len(p.Curve.Travel) != 91 {
		t.Fatalf("%d frames, %d positions", len(p.Frames), len(p.Curve.Travel))
	}
	for k, f := range p.Frames {
		phi := float64(k) * math.Pi / 180
		near(t, "travel", f.Travel, 0.8*phi, 1e-5, "m")
		near(t, "contact x", f.Contact[0], 0.8*math.Cos(phi), 1e-5, "m")
		near(t, "contact y", f.Contact[1], 0.8*math.Sin(phi), 1e-5, "m")
		near(t, "turn", f.Poses[1].Turn, phi, 1e-6, "rad")
		force := 20 * mechanism.Gravity * math.Cos(phi) / 2
		near(t, "holding", *p.Curve.Hold[k], force, 0.01, "N")
		if k == 90 {
			continue // nothing loads it there, so nothing has an arm
		}
		load, contact := armOf(&f, api.LoadArm), armOf(&f, api.ContactArm)
		near(t, "load arm", load.Length, 0.4*math.Cos(phi), 1e-5, "m")
		near(t, "contact arm", contact.Length, 0.8, 1e-5, "m")
		near(t, "contact force", math.Hypot(f.Forces[0].Vector[0], f.Forces[0].Vector[1]), force, 0.02, "N")
		near(t, "weight", f.Forces[1].Vector[1], -20*mechanism.Gravity, 0.01, "N")
	}
	// The hand turns counter-clockwise, so the outer side of its path is outward.
	near(t, "normal at the start", p.Curve.Normal[0][0], 1, 1e-6, "")
	near(t, "normal at the end", p.Curve.Normal[90][1], 1, 1e-6, "")
}

// The band of first order: ±4 mm of 400 mm is ±1 % of the force everywhere.
func TestLeverBand(t *testing.T) {
	p := preview(t, lever, api.Look{})
	if p.Band == nil || p.Band.Sampled || p.Band.Phase != api.Lifting || p.Band.Narrow.Path != "points.horn.x" {
		t.Fatalf("%+v", p.Band)
	}
	for k := range p.Band.Low {
		f := *p.Curve.Hold[k]
		near(t, "low", *p.Band.Low[k], 0.99*f, 0.02, "N")
		near(t, "high", *p.Band.High[k], 1.01*f, 0.02, "N")
	}
	if strings.Contains(strings.Join(p.Words, " "), "nothing is said about how sure") {
		t.Errorf("the words leave the band out: %q", p.Words)
	}
	if p := preview(t, lever, api.Look{NoBand: true}); p.Band != nil {
		t.Error("a band that was not asked for")
	}
}

func TestLeverStructure(t *testing.T) {
	p := preview(t, lever, api.Look{Structure: true, Settings: []api.Choice{{Setting: "handle", Value: "far"}, {Setting: "plates", Value: "22.5 kg"}}})
	s := p.Structure
	grip := s.Points[2]
	if grip.Name != "grip" || grip.Pin || grip.Fixed || grip.At != (api.Place{0.9, 0}) {
		t.Errorf("grip moved by its setting: %+v", grip)
	}
	if axle := s.Points[0]; !axle.Pin || !axle.Fixed {
		t.Errorf("axle: %+v", axle)
	}
	if horn := s.Points[1]; horn.Plus != (api.Place{0.004, 0}) {
		t.Errorf("horn: %+v", horn)
	}
	if s.Links[1].Name != "arm" || strings.Join(s.Links[1].Points, " ") != "axle horn grip" {
		t.Errorf("links: %+v", s.Links)
	}
	if s.Loads[0] != (api.Load{Name: "plates", Kind: "plates"}) {
		t.Errorf("loads: %+v", s.Loads)
	}
	plates := s.Settings[0]
	if !plates.Ranged || len(plates.Values) != 21 || plates.Values[9] != "22.5 kg" || plates.Default != "20 kg" || plates.Chosen != "22.5 kg" {
		t.Errorf("plates: %+v", plates)
	}
	if h := s.Settings[1]; h.Ranged || strings.Join(h.Values, " ") != "near far" || h.Default != "near" || h.Chosen != "far" {
		t.Errorf("handle: %+v", h)
	}
	for _, v := range s.Values {
		switch v.Path {
		case "points.horn.x":
			if v.Text != "400 ± 4" || v.Value != 0.4 || v.Plus != 0.004 || v.Unit != "mm" || v.PerSI != 1000 || v.Quantity != "length" || v.Line != 5 {
				t.Errorf("%+v", v)
			}
		case "settings.handle.values.far":
			if v.Text != "100 mm" || v.Setting != "handle" {
				t.Errorf("%+v", v)
			}
		}
	}
}

// Every machine of the demo room is shown whole, and what is sent fits itself:
// the contact carried by its link's pose lies where the curve says, every arm is
// square to its force, and the sheet's own numbers stand where their paths say.
func TestDemoMachines(t *testing.T) {
	for _, f := range demo.Machines() {
		t.Run(f.Name, func(t *testing.T) {
			p := preview(t, string(f.Data), api.Look{Frames: api.AllFrames, Structure: true, Positions: 31, Tempo: &api.Tempo{Up: 2, Down: 2}})
			if _, err := json.Marshal(p); err != nil {
				t.Fatal(err)
			}
			checkColumns(t, &p)
			for _, fr := range p.Frames {
				checkFrame(t, &p, &fr)
			}
			for _, v := range p.Structure.Values {
				if v.Text == "" && v.Setting == "" {
					t.Errorf("no text at %s", v.Path)
				}
			}
			if p.Stroke == nil && p.StrokeGap == "" {
				t.Error("neither a stroke nor why there is none")
			}
		})
	}
}

func checkColumns(t *testing.T, p *api.Preview) {
	t.Helper()
	c, n := p.Curve, len(p.Curve.Travel)
	for name, got := range map[string]int{"driver": len(c.Driver), "contact": len(c.Contact), "normal": len(c.Normal), "hold": len(c.Hold), "lift": len(c.Lift),
		"lower": len(c.Lower), "load travel": len(c.LoadTravel), "lift ratio": len(c.LiftRatio), "mass": len(c.Mass), "gap": len(c.Gap), "frames": len(p.Frames)} {
		if got != n {
			t.Errorf("column %s has %d entries, travel has %d", name, got, n)
		}
	}
	for k := range n {
		if k > 0 && c.Travel[k] <= c.Travel[k-1] {
			t.Errorf("travel does not grow at %d", k)
		}
		if (c.Hold[k] == nil) != (c.Gap[k] != nil) {
			t.Errorf("position %d: force %v, gap %v", k, c.Hold[k], c.Gap[k])
		}
		near(t, "normal", math.Hypot(c.Normal[k][0], c.Normal[k][1]), 1, 2e-6, "")
	}
}

func checkFrame(t *testing.T, p *api.Preview, f *api.Frame) {
	t.Helper()
	d := p.Drawing
	pose := f.Poses[d.On]
	at := planar.TurnThenShift(planar.Angle(pose.Turn), planar.Vec{X: pose.X, Y: pose.Y}).Point(vec(d.Contact))
	if off := at.Sub(vec(f.Contact)).Norm(); off > 5e-5 {
		t.Errorf("position %d: contact is off its link by %g m", f.Position, off)
	}
	for _, a := range f.Arms {
		along, arm := vec(a.Acts).Sub(vec(a.Foot)), vec(a.Foot).Sub(vec(a.Axis))
		if math.Abs(along.Dot(arm)) > 1e-4 {
			t.Errorf("position %d: arm %q is not square to its force", f.Position, a.Name)
		}
		near(t, a.Name, arm.Norm(), a.Length, 2e-5, "m")
	}
	sum := 0.0
	for _, s := range f.Shares {
		sum += s.Force
	}
	if f.Gap == "" {
		near(t, "sum of the shares", sum, *p.Curve.Hold[f.Position], 0.05, "N")
		if f.Because == "" {
			t.Errorf("position %d has no reason", f.Position)
		}
	}
	lo, hi := d.Low, d.High
	if f.Contact[0] < lo[0]-1e-4 || f.Contact[1] < lo[1]-1e-4 || f.Contact[0] > hi[0]+1e-4 || f.Contact[1] > hi[1]+1e-4 {
		t.Errorf("position %d: the contact lies outside the drawing", f.Position)
	}
}

func TestUnusableSheets(t *testing.T) {
	for _, c := range []struct {
		name, text, want string
		line             int
	}{
		{"no YAML", "steelyard: machine 1\npoints: [\n", "not closed", 2},
		{"unknown point", strings.Replace(lever, "at: horn", "at: horm", 1), "horm", 11},
		{"two freedoms", strings.Replace(lever, "arm: [axle, horn, grip]", "arm: [axle, horn]\n  rod: [horn, grip]", 1), "", 0},
		{"unknown setting", lever, "boat", 0},
	} {
		look := api.Look{Structure: true}
		if c.want == "boat" {
			look.Settings = []api.Choice{{Setting: "boat", Value: "1"}}
		}
		p := Preview(context.Background(), Read(c.text), look, nil)
		if len(p.Problems) == 0 || p.Curve != nil || p.Text != c.text {
			t.Errorf("%s: %+v", c.name, p)
			continue
		}
		if first := p.Problems[0]; !strings.Contains(first.Message, c.want) || c.line > 0 && first.Line != c.line {
			t.Errorf("%s: %+v", c.name, first)
		}
	}
}
