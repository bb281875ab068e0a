// Command survey computes the survey tables of package reference from the
// public raw data. README.md beside it tells where the data are published.
package main

import (
	"bytes"
	"crypto/sha256"
	"encoding/csv"
	"encoding/hex"
	"fmt"
	"math"
	"os"
	"path/filepath"
	"sort"
	"strconv"

	"gonum.org/v1/gonum/stat"

	"steelyard/reference"
)

const source = "ANSUR II 2012 survey of US Army personnel, public data 2017; soldiers of 17 to 58 a"

var digests = map[string]string{
	"male":   "2c10580d721799cd7d341733e6aa736b34e29979e75dfbd7aeeb3a757e5e7f4f",
	"female": "ed7e800aa97a4d42f8286b988be2fe1883a2e789588169db959864b707d1757a",
}

// columns gives each dimension as one raw column, or the first less the second.
var columns = [reference.NumDimensions][]string{
	reference.Stature:           {"stature"},
	reference.Mass:              {"weightkg"},
	reference.UpperArm:          {"acromionradialelength"},
	reference.Forearm:           {"radialestylionlength"},
	reference.ForearmGrip:       {"forearmcenterofgriplength"},
	reference.Hand:              {"handlength"},
	reference.ShoulderBreadth:   {"biacromialbreadth"},
	reference.DeltoidBreadth:    {"bideltoidbreadth"},
	reference.HipBreadth:        {"hipbreadth"},
	reference.SeatBreadth:       {"hipbreadthsitting"},
	reference.Thigh:             {"trochanterionheight", "lateralfemoralepicondyleheight"},
	reference.Shank:             {"lateralfemoralepicondyleheight", "lateralmalleolusheight"},
	reference.AnkleHeight:       {"lateralmalleolusheight"},
	reference.Foot:              {"footlength"},
	reference.HeelToBall:        {"balloffootlength"},
	reference.SittingHeight:     {"sittingheight"},
	reference.Trunk:             {"acromialheight", "trochanterionheight"},
	reference.ElbowRest:         {"elbowrestheight"},
	reference.ButtockKnee:       {"buttockkneelength"},
	reference.ButtockPopliteal:  {"buttockpopliteallength"},
	reference.PoplitealHeight:   {"poplitealheight"},
	reference.KneeHeightSitting: {"kneeheightsitting"},
	reference.ThighClearance:    {"thighclearance"},
	reference.ChestDepth:        {"chestdepth"},
}

func main() {
	if len(os.Args) != 3 {
		fmt.Fprintln(os.Stderr, "usage: survey FOLDER-WITH-RAW-DATA FOLDER-TO-WRITE")
		os.Exit(2)
	}
	if err := run(os.Args[1], os.Args[2]); err != nil {
		fmt.Fprintln(os.Stderr, "survey:", err)
		os.Exit(1)
	}
}

func run(from, to string) error {
	dims := [][]string{{"sex", "dimension", "unit", "n", "mean", "sd", "min", "p1", "p5", "p25", "p50", "p75",
		"p95", "p99", "max", "ratio_mean", "ratio_sd", "source", "mark"}}
	head := []string{"sex", "dimension"}
	for d := range reference.NumDimensions {
		head = append(head, d.String())
	}
	corr := [][]string{append(head, "source", "mark")}
	for _, sex := range []string{"male", "female"} {
		people, err := read(filepath.Join(from, "ansur2_"+sex+".csv"), digests[sex])
		if err != nil {
			return err
		}
		dims = append(dims, describe(sex, people)...)
		corr = append(corr, correlate(sex, people)...)
	}
	if err := write(filepath.Join(to, "survey_dimensions.csv"), dims); err != nil {
		return err
	}
	return write(filepath.Join(to, "survey_correlations.csv"), corr)
}

// read returns one slice for each dimension, one value for each person: mm, kg.
func read(path, digest string) ([reference.NumDimensions][]float64, error) {
	var people [reference.NumDimensions][]float64
	raw, err := os.ReadFile(path)
	if err != nil {
		return people, err
	}
	if sum := sha256.Sum256(raw); hex.EncodeToString(sum[:]) != digest {
		return people, fmt.Errorf("%s is not the file the tables were computed from", filepath.Base(path))
	}
	all, err := csv.NewReader(bytes.NewReader(raw)).ReadAll()
	if err != nil {
		return people, err
	}
	at := make(map[string]int)
	for i, h := range all[0] {
		at[h] = i
	}
	for _, cells := range all[1:] {
		for d, cols := range columns {
			v := 0.0
			for k, c := range cols {
				x, err := strconv.ParseFloat(cells[at[c]], 64)
				if err != nil {
					return people, err
				}
				v += x * float64(1-2*k)
			}
			if reference.Dimension(d) == reference.Mass {
				v /= 10 // the raw column is in 0.1 kg
			}
			people[d] = append(people[d], v)
		}
	}
	return people, nil
}

func describe(sex string, people [reference.NumDimensions][]float64) [][]string {
	var out [][]string
	for d := range reference.NumDimensions {
		x := people[d]
		ratio := make([]float64, len(x))
		for i := range x {
			ratio[i] = x[i] / people[reference.Stature][i]
		}
		unit := "mm"
		if d == reference.Mass {
			unit = "kg"
			for i := range ratio {
				ratio[i] *= 1000 // kg per metre of stature
			}
		}
		mean, sd := stat.MeanStdDev(x, nil)
		rm, rs := stat.MeanStdDev(ratio, nil)
		sorted := append([]float64(nil), x...)
		sort.Float64s(sorted)
		line := []string{sex, d.String(), unit, strconv.Itoa(len(x)), num(mean), num(sd)}
		for _, p := range []float64{0, 0.01, 0.05, 0.25, 0.5, 0.75, 0.95, 0.99, 1} {
			line = append(line, num(percentile(sorted, p)))
		}
		out = append(out, append(line, num(rm), num(rs), source, "computed"))
	}
	return out
}

// percentile interpolates linearly between order statistics.
func percentile(sorted []float64, p float64) float64 {
	h := p * float64(len(sorted)-1)
	i := int(math.Floor(h))
	j := min(i+1, len(sorted)-1)
	return sorted[i] + (h-float64(i))*(sorted[j]-sorted[i])
}

func correlate(sex string, people [reference.NumDimensions][]float64) [][]string {
	for i, m := range people[reference.Mass] {
		people[reference.Mass][i] = math.Log(m)
	}
	var out [][]string
	for i := range reference.NumDimensions {
		line := []string{sex, i.String()}
		for j := range reference.NumDimensions {
			line = append(line, strconv.FormatFloat(stat.Correlation(people[i], people[j], nil), 'f', 6, 64))
		}
		out = append(out, append(line, source, "computed"))
	}
	return out
}

func num(v float64) string { return strconv.FormatFloat(v, 'g', 6, 64) }

func write(path string, table [][]string) error {
	f, err := os.Create(path)
	if err != nil {
		return err
	}
	if err := csv.NewWriter(f).WriteAll(table); err != nil {
		f.Close()
		return err
	}
	return f.Close()
}
