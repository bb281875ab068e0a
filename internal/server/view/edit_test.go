package view

import (
	"context"
	"math"
	"math/rand/v2"
	"strings"
	"testing"

	"steelyard/demo"
	"steelyard/internal/server/api"
	"steelyard/planar"
)

func edited(t *testing.T, text string, settings []api.Choice, e api.Edit) string {
	t.Helper()
	values, changed, err := Read(text).Resolve(settings, []api.Edit{e})
	if err != nil {
		t.Fatal(err)
	}
	out, err := Read(text).Write(values)
	if err != nil {
		t.Fatal(err)
	}
	if changed.String() != out.String() {
		t.Errorf("the edit made\n%s\nand its values make\n%s", changed, out)
	}
	return out.String()
}

func TestRewrittenLengths(t *testing.T) {
	for _, c := range []struct {
		old   string
		value float64
		want  string
	}{
		{"480 ± 5", 0.5124, "512.4 ± 5"},
		{"480", -0.03, "-30"},
		{"480.0 ± 5 mm", 0.51234, "512.3 ± 5 mm"},
		{"1.2 m ± 5 mm", 1.23456, "1.2346 ± 0.005 m"},
		{"31 in", 0.8, `31.495 in`}, // 0.8 m over 25.4 mm, exact by definition, is 31.496…
		{"5 ft 11 in ± 1/4 in", 1.8, `70.865 ± 0.25 in`},
		{"100 ± 1 %", 0.2, "200 ± 1"}, // a share of the old value stays what it was
		{"0 ± 3", -0.00001, "0 ± 3"},
	} {
		if got, err := rewritten(c.old, c.value); err != nil || got != c.want {
			t.Errorf("%q at %g m: %q, %v; want %q", c.old, c.value, got, err, c.want)
		}
	}
}

func TestDragsKeepTheRestOfTheSheet(t *testing.T) {
	got := edited(t, lever, nil, api.Edit{Point: &api.PointDrag{Point: "horn", To: api.Place{0.45, -0.0123}}})
	want := strings.Replace(lever, "horn: [400 ± 4, 0]", "horn: [450 ± 4, -12.3]", 1)
	if got != want {
		t.Errorf("got %s", got)
	}
	// With the handle far out the grip is seen 100 mm further along the arm.
	got = edited(t, lever, []api.Choice{{Setting: "handle", Value: "far"}}, api.Edit{Point: &api.PointDrag{Point: "grip", To: api.Place{0.85, 0}}})
	if !strings.Contains(got, "grip: [750, 0]") {
		t.Errorf("got %s", got)
	}
	// With the arm upright, 0.5 m above the axle is 0.5 m out on the level arm.
	upright := math.Pi / 2
	got = edited(t, lever, nil, api.Edit{Point: &api.PointDrag{Point: "horn", To: api.Place{0, 0.5}, Driver: &upright}})
	if !strings.Contains(got, "horn: [500 ± 4, 0]") {
		t.Errorf("got %s", got)
	}
}

// Wherever in its travel a demo machine stands, a point that is dragged a
// little is then seen where the finger let go.
func TestDragFollowsTheFinger(t *testing.T) {
	rnd := rand.New(rand.NewPCG(7, 8))
	tried := 0
	for _, f := range demo.Machines() {
		p := preview(t, string(f.Data), api.Look{Structure: true, Positions: 21, Frames: api.AllFrames})
		for _, pt := range p.Structure.Points {
			k := rnd.IntN(len(p.Frames))
			if p.Frames[k].Gap != "" {
				continue
			}
			at, ok := shown(&p, k, pt)
			if !ok {
				continue
			}
			to := api.Place{at.X + (rnd.Float64()-0.5)*0.02, at.Y + (rnd.Float64()-0.5)*0.02}
			values, text, err := Read(string(f.Data)).Resolve(nil, []api.Edit{{Point: &api.PointDrag{Point: pt.Name, To: to, Driver: &p.Curve.Driver[k]}}})
			if err != nil {
				t.Errorf("%s, %s: %v", f.Name, pt.Name, err)
				continue
			}
			after := Preview(context.Background(), text, api.Look{Structure: true, Positions: 21, Frames: api.AllFrames}, nil)
			if len(after.Problems) > 0 || len(after.Frames) != len(p.Frames) || math.Abs(after.Curve.Driver[k]-p.Curve.Driver[k]) > 1e-9 {
				continue // the machine cannot be built like that, or its travel has changed
			}
			tried++
			for _, q := range after.Structure.Points {
				if q.Name != pt.Name {
					continue
				}
				now, _ := shown(&after, k, q)
				if off := now.Sub(vec(to)).Norm(); off > 2e-4 {
					t.Errorf("%s, %s at position %d: dragged to %v, seen at %v, off by %.2f mm; written %v", f.Name, pt.Name, k, to, now, 1000*off, values)
				}
			}
		}
	}
	if tried < 80 {
		t.Errorf("only %d drags were tried", tried)
	}
}

// shown returns where a point is seen at a position.
func shown(p *api.Preview, k int, pt api.Point) (planar.Vec, bool) {
	if len(pt.Links) == 0 {
		return planar.Vec{}, false
	}
	name := pt.Links[len(pt.Links)-1]
	for l, shape := range p.Drawing.Links {
		if shape.Name == name {
			pose := p.Frames[k].Poses[l]
			return planar.TurnThenShift(planar.Angle(pose.Turn), planar.Vec{X: pose.X, Y: pose.Y}).Point(vec(pt.At)), true
		}
	}
	return planar.Vec{}, false
}

func TestCamVertexDrag(t *testing.T) {
	const cam = `steelyard: machine 1
name: Cam curl
points:
  axle: [0, 600]
  grip: [350, 600]
  rear: [-800, 900]
  bolt: [-800, 300]
links:
  ground: [axle, rear]
  arm: [axle, grip]
sheaves:
  rear: {at: rear, diameter: 100 mm}
cams:
  heart:
    axis: axle
    on: arm
    start: 90 deg
    traced: [[90, 0], [60, 70], [0, 80], [-70, 60], [-80, 0], [-60, -60], [0, -80], [70, -60]]
ropes:
  main: [bolt, over rear, {over: heart, tied: -90 deg}]
loads:
  stack: {kind: weight stack, at: bolt, mass: 40 kg}
contact: {kind: grip, at: grip}
travel: {turn: arm, from: 0 deg, to: -60 deg}
`
	p := preview(t, cam, api.Look{Structure: true})
	c := p.Structure.Cams[0]
	// Turned by 90°, (90, 0) from the axle is seen straight above it.
	if c.Name != "heart" || len(c.Points) != 8 || c.Points[0] != (api.Place{0, 0.69}) {
		t.Fatalf("%+v", c)
	}
	got := edited(t, cam, nil, api.Edit{Cam: &api.CamDrag{Cam: "heart", Vertex: 1, To: api.Place{-0.005, 0.7}}})
	if want := strings.Replace(cam, "[[90, 0]", "[[100, 5]", 1); got != want {
		t.Errorf("got %s", got)
	}
	turned := -math.Pi / 6
	got = edited(t, cam, nil, api.Edit{Cam: &api.CamDrag{Cam: "heart", Vertex: 1, To: api.Place{0.1 * math.Sin(math.Pi/6), 0.6 + 0.1*math.Cos(math.Pi/6)}, Driver: &turned}})
	if !strings.Contains(got, "[[100, 0]") {
		t.Errorf("with the arm turned: %s", got)
	}
}

func TestRefusedEdits(t *testing.T) {
	set := strings.Replace(lever, "handle: {moves: {points: [grip], along: [axle, grip]}, values: {near: 0 mm, far: 100 mm}}",
		"hole: {sets: points.horn.x, values: [400 mm, 500 mm]}", 1)
	far := 1e9
	for _, c := range []struct {
		name, text string
		edit       api.Edit
		want       string
	}{
		{"nothing", lever, api.Edit{}, "exactly one"},
		{"two at once", lever, api.Edit{Value: &api.ValueEdit{}, Point: &api.PointDrag{}}, "exactly one"},
		{"unknown point", lever, api.Edit{Point: &api.PointDrag{Point: "'; --"}}, "no point"},
		{"unknown path", lever, api.Edit{Value: &api.ValueEdit{Path: "points.nowhere.x", Text: "1"}}, "no such value"},
		{"two lines", lever, api.Edit{Value: &api.ValueEdit{Path: "points.horn.x", Text: "1\nname: evil"}}, "one line"},
		{"a list", lever, api.Edit{Value: &api.ValueEdit{Path: "points.horn.x", Text: "1, 2, 3]"}}, ""},
		{"far away", lever, api.Edit{Point: &api.PointDrag{Point: "horn", To: api.Place{1e9, 0}}}, "100 m"},
		{"not a number", lever, api.Edit{Point: &api.PointDrag{Point: "horn", To: api.Place{math.NaN(), 0}}}, "100 m"},
		{"set by a setting", set, api.Edit{Point: &api.PointDrag{Point: "horn", To: api.Place{0.4, 0}}}, "a setting decides"},
		{"outside the travel", lever, api.Edit{Point: &api.PointDrag{Point: "horn", To: api.Place{0.4, 0}, Driver: &far}}, "outside its travel"},
		{"no cam", lever, api.Edit{Cam: &api.CamDrag{Cam: "x", Vertex: 1}}, "no point 1"},
	} {
		_, text, err := Read(c.text).Resolve(nil, []api.Edit{c.edit})
		if c.want == "" { // written between quotes, so it stays one text
			if err != nil || len(Preview(context.Background(), text, api.Look{}, nil).Problems) == 0 {
				t.Errorf("%s: %v", c.name, err)
			}
			continue
		}
		if err == nil || !strings.Contains(err.Error(), c.want) {
			t.Errorf("%s: %v, want %q", c.name, err, c.want)
		}
	}
}
