package mechanism

import (
	"errors"
	"math/rand/v2"
	"strings"
	"testing"

	"steelyard/planar"
)

// FuzzCompile: whatever is described, there is an answer or a sentence; no
// panic, no endless loop, and no NaN where there is no stop.
func FuzzCompile(f *testing.F) {
	f.Add([]byte{})
	f.Add([]byte("a machine of many words, each of them a number that nobody measured, and none of them in its place"))
	r := rand.New(rand.NewPCG(5, 5))
	for range 40 {
		f.Add(randomBytes(r))
	}
	f.Fuzz(func(t *testing.T, data []byte) {
		r := &bytesReader{data}
		if r.upTo(4) == 0 {
			tryMachine(t, r.machine())
			return
		}
		tryMachine(t, r.grown())
	})
}

func randomBytes(r *rand.Rand) []byte {
	data := make([]byte, 120)
	for i := range data {
		data[i] = byte(r.Uint32())
	}
	return data
}

// TestFuzzReachesTheSolver: a fuzz target whose machines are all refused at the
// door would prove nothing.
func TestFuzzReachesTheSolver(t *testing.T) {
	r := rand.New(rand.NewPCG(6, 6))
	compiled, swept := 0, 0
	for range 2000 {
		md, err := Compile((&bytesReader{randomBytes(r)}).grown())
		if err != nil {
			continue
		}
		compiled++
		if sw, err := md.Sweep(5); err == nil && sw.Stops[2] == nil {
			swept++
		}
	}
	if compiled < 200 || swept < 100 {
		t.Errorf("of 2000 random machines %d compile and %d have a force half way, want 200 and 100", compiled, swept)
	}
}

// FuzzSpoil: a machine of the trade with a few of its numbers spoilt.
func FuzzSpoil(f *testing.F) {
	list := classics()
	for i := range list {
		f.Add(byte(i), []byte{byte(7 * i), 140, 3, 200, 250, 90})
	}
	f.Fuzz(func(t *testing.T, which byte, data []byte) {
		r := &bytesReader{data}
		m := rubbed(list[int(which)%len(list)].m)
		for range r.upTo(4) {
			spoil(&m, r)
		}
		tryMachine(t, m)
	})
}

func spoil(m *Machine, r *bytesReader) {
	switch r.upTo(7) {
	case 0:
		m.Links[r.upTo(len(m.Links))].Mass = r.number()
	case 1:
		m.Joints[r.upTo(len(m.Joints))].At = r.point()
	case 2:
		m.Joints[r.upTo(len(m.Joints))].Along = r.angle()
	case 3:
		m.Drive = Drive{r.upTo(len(m.Joints) + 1), r.number(), r.number()}
	case 4:
		if list := routes(m); len(list) > 0 {
			if route := list[r.upTo(len(list))]; len(route) > 0 {
				s := &route[r.upTo(len(route))]
				s.At, s.Side, s.Anchor = r.point(), planar.Side(r.upTo(3)-1), r.angle()
			}
		}
	case 5:
		m.Contact = Contact{"contact", r.link(len(m.Links)), r.point()}
	default:
		m.Joints[r.upTo(len(m.Joints))].Friction = JointFriction{r.size(), r.size() / 10, r.size(), r.size()}
	}
}

func tryMachine(t *testing.T, m Machine) {
	md, err := Compile(m)
	if err != nil {
		sentence(t, err)
		return
	}
	sw, err := md.Sweep(9)
	if err != nil {
		sentence(t, err)
		return
	}
	for i, stop := range sw.Stops {
		if stop != nil {
			sentence(t, stop)
			continue
		}
		for _, v := range []float64{sw.Hold[i], sw.Lift[i], sw.Lower[i], sw.LiftRatio[i], sw.Mass[i], sw.MassSlope[i], sw.Travel[i], sw.Contact[i].X, sw.Tangent[i].Y} {
			if !finite(v) {
				t.Fatalf("position %d holds %g", i, v)
			}
		}
		for j := range m.Joints {
			if r := sw.Reaction(i, j, Lift); !r.Force.Finite() || !finite(r.Moment) {
				t.Fatalf("joint %d at position %d transmits %v", j, i, r)
			}
		}
	}
	r, err := md.Stroke(sw, Tempo{1, 0, 1, 0}, 8)
	if err != nil {
		sentence(t, err)
		return
	}
	for i, f := range r.Force {
		if !finite(f) {
			t.Fatalf("row %d of the stroke holds %g", i, f)
		}
	}
}

// sentence fails unless the error is one of ours, fit to be shown.
func sentence(t *testing.T, err error) {
	t.Helper()
	var part *PartError
	var freedom *FreedomError
	var stop *Stop
	if !errors.As(err, &part) && !errors.As(err, &freedom) && !errors.As(err, &stop) {
		t.Fatalf("%T is no error of this package: %v", err, err)
	}
	if text := err.Error(); !strings.Contains(text, "; ") || strings.Contains(text, "%!") {
		t.Fatalf("not a sentence: %q", text)
	}
	if stop != nil && (!stop.Place.Finite() || !finite(stop.Driver)) {
		t.Fatalf("stop without place: %v", stop)
	}
}
