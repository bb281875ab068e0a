package view

import "steelyard/mechanism"

// linkCount returns one past the last link, so that it can be ranged over.
func linkCount(m *mechanism.Machine) mechanism.LinkID {
	return mechanism.LinkID(len(m.Links) + 1)
}

func linkName(m *mechanism.Machine, l mechanism.LinkID) string {
	if l == mechanism.Ground {
		return "ground"
	}
	return m.Links[l-1].Name
}

// isStack reports whether the link is a weight stack, which hangs in its own
// upright guides.
func isStack(m *mechanism.Machine, l mechanism.LinkID) bool {
	return l != mechanism.Ground && m.Links[l-1].Upright
}
