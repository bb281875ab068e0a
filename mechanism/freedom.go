package mechanism

import (
	"math/bits"
)

// constraintKind is what a constraint takes away.
type constraintKind uint8

const (
	pinned constraintKind = iota // two points coincide: 2 rows
	guided                       // no turn and no offset from a line: 2 rows
	driven                       // the driver has its value: 1 row
	roped                        // the rope keeps its length: 1 row
)

func (k constraintKind) rows() int {
	if k == pinned || k == guided {
		return 2
	}
	return 1
}

// constraint is a joint, the driver or a rope, seen as rows of equations.
type constraint struct {
	kind  constraintKind
	index int    // into Machine.Joints or Machine.Ropes
	links uint32 // set of moving links it touches, bit LinkID-1
	row   int    // its first row in the whole machine's numbering
}

// group is a smallest set of links that can be placed together once the groups
// before it are: an Assur group, or the driven link itself.
type group struct {
	links       []LinkID
	constraints []int // indices into Model.constraints; rows in this order
	dyad        *dyad // closed form, where there is one
}

// maxLinks bounds the search for groups; gym machines have fewer than ten.
const maxLinks = 16

// order splits the links into groups, each placed by the ones before it.
//
// The machine has one freedom when its rows, the driver's included, are three
// to a link, and every group is found with exactly as many rows as it needs.
// Source: the decomposition of planar linkages into Assur groups, as in
// textbooks on the theory of machines.
func order(links int, constraints []constraint) ([]group, error) {
	rows := 0
	for _, c := range constraints {
		rows += c.kind.rows()
	}
	freedoms := 3*links - (rows - 1)

	var groups []group
	placed, all := uint32(0), uint32(1)<<links-1
	used := make([]bool, len(constraints))
	for placed != all {
		set, have := nextGroup(placed, all, constraints, used)
		switch {
		case set == 0:
			return nil, &freedomSets{freedoms: freedoms, loose: all &^ placed}
		case have > 3*bits.OnesCount32(set):
			return nil, &freedomSets{freedoms: freedoms, tight: set}
		}
		groups = append(groups, takeGroup(set, placed, constraints, used))
		placed |= set
	}
	for i, c := range constraints {
		if !used[i] {
			return nil, &freedomSets{freedoms: freedoms, tight: max(c.links, 1)}
		}
	}
	return groups, nil
}

// freedomSets is a FreedomError before its links have names.
type freedomSets struct {
	freedoms     int
	loose, tight uint32
}

func (*freedomSets) Error() string { return "mechanism: not one freedom" }

// nextGroup returns the smallest set of unplaced links whose own rows are at
// least three a link, and how many they are; the empty set if there is none.
func nextGroup(placed, all uint32, constraints []constraint, used []bool) (set uint32, rows int) {
	free := all &^ placed
	for size := 1; size <= bits.OnesCount32(free); size++ {
		// Subsets of free in increasing order; those of the wrong size are passed over.
		for s := free & -free; s != 0; s = (s - free) & free {
			if bits.OnesCount32(s) != size {
				continue
			}
			if n := rowsOn(s, placed, constraints, used); n >= 3*size {
				return s, n
			}
		}
	}
	return 0, 0
}

// rowsOn counts the rows that involve the set and nothing beyond it but placed links.
func rowsOn(set, placed uint32, constraints []constraint, used []bool) int {
	n := 0
	for i, c := range constraints {
		if !used[i] && c.links&set != 0 && c.links&^(set|placed) == 0 {
			n += c.kind.rows()
		}
	}
	return n
}

func takeGroup(set, placed uint32, constraints []constraint, used []bool) group {
	var g group
	for s := set; s != 0; s &= s - 1 {
		g.links = append(g.links, LinkID(bits.TrailingZeros32(s)+1))
	}
	for i, c := range constraints {
		if !used[i] && c.links&set != 0 && c.links&^(set|placed) == 0 {
			used[i] = true
			g.constraints = append(g.constraints, i)
		}
	}
	return g
}
