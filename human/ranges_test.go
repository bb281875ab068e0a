package human

import (
	"strings"
	"testing"

	"steelyard/reference"
)

func TestRangesOfAWoman(t *testing.T) {
	r := bodyOf(t, Person{Height: 1.65, Mass: 62, Sex: reference.Female, Age: 30}).Ranges
	for _, c := range []struct {
		at   Coordinate
		a, b float64 // degrees
		mark reference.Mark
	}{
		{KneeFlexion, -1.6, 141.9, reference.Retrieved},    // Soucie 2011; hyperextension from memory
		{ElbowFlexion, -4.7, 150.0, reference.Retrieved},   // the same
		{AnkleDorsiflexion, -62.1, 38, reference.Memory},   // the same; lunge of Bennell et al. 1998
		{ShoulderFlexion, -60, 172.0, reference.Retrieved}, // extension AAOS
		{ShoulderRotation, -70, 90, reference.Retrieved},   // AAOS
	} {
		near(t, c.at.String()+" from", r[c.at].Min.Angle.Degrees(), c.a, 1e-9)
		near(t, c.at.String()+" to", r[c.at].Max.Angle.Degrees(), c.b, 1e-9)
		if r[c.at].Max.Source.Mark != c.mark {
			t.Errorf("%v: mark %v", c.at, r[c.at].Max.Source.Mark)
		}
	}
}

// A foot that bears load bends as in a lunge against a wall: Calatayud et al.
// 2015, 40.0° of young men; their own figure wins.
func TestAnkleBearsLoad(t *testing.T) {
	man := Person{Height: 1.75, Mass: 75, Sex: reference.Male, Age: 25}
	usual := bodyOf(t, man).Ranges[AnkleDorsiflexion].Max
	man.Limits = []Limit{{AnkleDorsiflex, degrees(21)}}
	own := bodyOf(t, man).Ranges[AnkleDorsiflexion].Max
	near(t, "usual", usual.Angle.Degrees(), 40, 1e-9)
	near(t, "own", own.Angle.Degrees(), 21, 1e-9)
	if usual.Own() || !own.Own() || usual.Source.Mark != reference.Retrieved {
		t.Errorf("sources %+v and %+v", usual.Source, own.Source)
	}
}

func TestOwnLimitsBreach(t *testing.T) {
	b := bodyOf(t, Person{Height: 1.65, Mass: 62, Sex: reference.Female, Age: 30, Limits: []Limit{{KneeFlex, degrees(100)}, {KneeExtend, degrees(-5)}}})
	if got := b.Ranges.CheckLeg(LegAngles{Knee: degrees(90)}); len(got) != 0 {
		t.Errorf("inside: %v", got)
	}
	got := b.Ranges.CheckLeg(LegAngles{Knee: degrees(112)})
	if len(got) != 1 || got[0].Motion != KneeFlex || !strings.Contains(got[0].String(), "12° past the limit of 100°") {
		t.Errorf("too far: %v", got)
	}
	got = b.Ranges.CheckLeg(LegAngles{Knee: 0})
	if len(got) != 1 || got[0].Motion != KneeExtend {
		t.Fatalf("too straight: %v", got)
	}
	near(t, "past the own limit", got[0].Beyond().Degrees(), 5, 1e-9)
}

// AAOS: 180° forward and to the side, 60° behind; 45° across from memory.
func TestElevationLimits(t *testing.T) {
	r := bodyOf(t, Person{Height: 1.75, Mass: 75}).Ranges
	for _, c := range []struct{ plane, want float64 }{{90, 180}, {0, 180}, {45, 180}, {-90, 60}, {180, 45}} {
		near(t, "elevation limit", r.Elevation(degrees(c.plane)).Angle.Degrees(), c.want, 1e-9)
	}
	// The raised arm: 45° behind the frontal plane and 130° across (two study
	// lists), over the top back down to the front.
	for _, c := range []struct {
		name             string
		elevation, plane float64
		motion           Action
		beyond           float64 // 0: allowed
	}{
		{"behind, within", 55, -90, 0, 0},
		{"behind, too far", 70, -90, ShoulderExtend, 10},
		{"level, drawn back 40°", 90, -40, 0, 0},
		{"level, drawn back 47°", 90, -47, ShoulderHorizontalAbduct, 2},
		{"level, 125° across", 90, 125, 0, 0},
		{"level, 133° across", 90, 133, ShoulderHorizontalAdduct, 3},
		{"overhead and a little behind", 170, -20, 0, 0},
		{"over the top", 176, -90, ShoulderFlex, 4}, // 184° forward
		{"hanging across the body", 40, 180, 0, 0},
		{"across the body", 60, 180, ShoulderAdduct, 15},
	} {
		got := r.CheckArm(ArmAngles{Elevation: degrees(c.elevation), Plane: degrees(c.plane)})
		switch {
		case c.beyond == 0 && len(got) != 0:
			t.Errorf("%s: %v", c.name, got)
		case c.beyond == 0:
		case len(got) != 1 || got[0].Motion != c.motion:
			t.Errorf("%s: %v", c.name, got)
		default:
			near(t, c.name, got[0].Beyond().Degrees(), c.beyond, 1e-9)
		}
	}
}

// A person kept from raising the arm above 80° in front must be flagged on the
// way to the side as well, less and less.
func TestOwnFlexionLimit(t *testing.T) {
	r := bodyOf(t, Person{Height: 1.75, Mass: 75, Limits: []Limit{{ShoulderFlex, degrees(80)}}}).Ranges
	// A limit behind the body holds below the level at which the arm may be drawn
	// back: 31° by the ellipse of 180 and 20° at 40° behind the frontal plane.
	stiff := bodyOf(t, Person{Height: 1.75, Mass: 75, Limits: []Limit{{ShoulderExtend, degrees(20)}}}).Ranges
	if got := stiff.CheckArm(ArmAngles{Elevation: degrees(40), Plane: degrees(-40)}); len(got) != 1 {
		t.Errorf("40° behind the frontal plane: %v", got)
	}
	for _, c := range []struct {
		plane float64
		want  bool
	}{{90, true}, {60, true}, {0, false}} {
		if got := r.CheckArm(ArmAngles{Elevation: degrees(110), Plane: degrees(c.plane)}); (len(got) > 0) != c.want {
			t.Errorf("110° in plane %.0f°: %v", c.plane, got)
		}
	}
}
