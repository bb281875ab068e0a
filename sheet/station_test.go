package sheet

import (
	"math"
	"os"
	"strings"
	"testing"

	"steelyard/exercise"
)

func builtFrom(t *testing.T, name string, data []byte) *Built {
	t.Helper()
	d, err := Read(name, data)
	if err != nil {
		t.Fatal(err)
	}
	m, err := d.Machine()
	if err != nil {
		t.Fatal(err)
	}
	b, err := m.Build(nil)
	if err != nil {
		t.Fatal(err)
	}
	return b
}

func TestStationIsRead(t *testing.T) {
	for _, want := range []struct {
		file   string
		anchor exercise.Anchor
		has    func(exercise.Station) bool
	}{
		{"seat", exercise.SeatAnchor, func(s exercise.Station) bool {
			return s.BackPad && s.On == exercise.OnShank && s.OneLimb && s.HasAxis && s.Axis.Y == 0.64 && s.At.X == -0.5 &&
				math.Abs(s.PadRadius-0.06) < 1e-12 && math.Abs(s.Trunk.Degrees()-85) < 1e-9 && math.Abs(s.Thigh.Degrees()-5) < 1e-9
		}},
		{"bench", exercise.BenchAnchor, func(s exercise.Station) bool {
			return s.Posture == exercise.LyingOnBack && s.Trunk == 0 && s.FromFront && len(s.Exercises) == 2 && s.Width == exercise.Some(0.6) &&
				s.Forward == exercise.Some(0.02) && s.Flare.Given && math.Abs(s.Flare.Value-math.Pi/4) < 1e-12
		}},
		{"standing", exercise.FeetAnchor, func(s exercise.Station) bool {
			return s.FacesBack && !s.BackPad && s.Bend > 1.57 && s.Posture == exercise.Standing
		}},
		{"kneeling", exercise.KneesAnchor, func(s exercise.Station) bool {
			return s.Contact == exercise.Strap && s.Height == exercise.Some(0.9)
		}},
		{"hips", exercise.HipsAnchor, func(s exercise.Station) bool {
			return s.Foot == exercise.Ball && s.Plate.Given && s.HasFeet && s.Posture == exercise.Seated
		}},
	} {
		data, err := os.ReadFile("testdata/station-" + want.file + ".yaml")
		if err != nil {
			t.Fatal(err)
		}
		s, ok := builtFrom(t, want.file, data).Station()
		if !ok || s.Anchor != want.anchor || !want.has(s) {
			t.Errorf("%s: got %+v, %v", want.file, s, ok)
		}
	}
}

func TestSheetWithoutStationStillWorks(t *testing.T) {
	if s, ok := builtFrom(t, "example", Example(KindMachine)).Station(); ok {
		t.Errorf("got %+v, want none", s)
	}
}

func TestBadStation(t *testing.T) {
	good, err := os.ReadFile("testdata/station-seat.yaml")
	if err != nil {
		t.Fatal(err)
	}
	for _, bad := range []struct{ from, to, want string }{
		{"serves: leg extension", "serves: leg extention", `did you mean "leg extension"?`},
		{"  on: shank\n", "", "the station does not say on what"},
		{"on: shank", "on: shin", "it is shank, thigh"},
		{"on: shank", "on: hips", "does not say where the feet stand"},
		{"seat: seat", "seat: seatt", `did you mean "seat"?`},
		{"back pad: 85 deg", "back pad: 300 deg", "a back slopes from"},
		{"works: one", "work: one", `did you mean "works"?`},
		{"seat: seat", "seat: seat\n  hips: seat", `both "seat" and "hips"`},
	} {
		text := strings.Replace(string(good), bad.from, bad.to, 1)
		d, err := Read("bad", []byte(text))
		if err != nil {
			t.Fatal(err)
		}
		if _, err := d.Machine(); err == nil || !strings.Contains(err.Error(), bad.want) {
			t.Errorf("%q: got %v, want it to say %q", bad.to, err, bad.want)
		}
	}
}
