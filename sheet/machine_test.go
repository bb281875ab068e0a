package sheet

import (
	"math"
	"os"
	"path/filepath"
	"testing"

	"steelyard/mechanism"
)

// mustMachine reads a sheet that has to be usable.
func mustMachine(t testing.TB, data []byte) *Machine {
	t.Helper()
	d, err := Read("test.yaml", data)
	if err != nil {
		t.Fatal(err)
	}
	m, err := d.Machine()
	if err != nil {
		t.Fatal(err)
	}
	return m
}

func mustBuild(t testing.TB, m *Machine, choice map[string]string) *Built {
	t.Helper()
	b, err := m.Build(choice)
	if err != nil {
		t.Fatal(err)
	}
	return b
}

func TestExampleCompiles(t *testing.T) {
	b := mustBuild(t, mustMachine(t, Example(KindMachine)), nil)
	md, err := mechanism.Compile(b.Machine)
	if err != nil {
		t.Fatal(err)
	}
	sw, err := md.Sweep(11)
	if err != nil {
		t.Fatal(err)
	}
	if sw.Len() != 11 {
		t.Fatalf("got %d positions, want 11", sw.Len())
	}
}

func TestExampleWithSettings(t *testing.T) {
	m := mustMachine(t, Example(KindMachine))
	b := mustBuild(t, m, map[string]string{"plates": "42.5", "Handle": "80 mm"})
	if got := b.Machine.Weights[0].Mass; got != 42.5 {
		t.Errorf("plates weigh %g kg, want 42.5 kg", got)
	}
	// The grip moves on from [640, 1090] by 80 mm along horn to grip, (160, 30).
	l := math.Hypot(160, 30)
	want := [2]float64{0.640 + 0.080*160/l, 1.090 + 0.080*30/l}
	if at := b.Machine.Contact.At; math.Abs(at.X-want[0]) > 1e-12 || math.Abs(at.Y-want[1]) > 1e-12 {
		t.Errorf("grip at %v m, want %v m", at, want)
	}
}

func TestSheetsCompile(t *testing.T) {
	files, err := filepath.Glob("testdata/*.yaml")
	if err != nil || len(files) < 4 {
		t.Fatalf("got %d sheets, %v", len(files), err)
	}
	for _, file := range files {
		t.Run(file, func(t *testing.T) {
			data, err := os.ReadFile(file)
			if err != nil {
				t.Fatal(err)
			}
			m := mustMachine(t, data)
			md, err := mechanism.Compile(mustBuild(t, m, nil).Machine)
			if err != nil {
				t.Fatal(m.Locate(err))
			}
			sw, err := md.Sweep(11)
			if err != nil {
				t.Fatal(m.Locate(err))
			}
			for i, stop := range sw.Stops {
				if stop != nil {
					t.Errorf("position %d: %v", i, m.Locate(stop))
				}
			}
		})
	}
}
