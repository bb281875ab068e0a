package draw

import (
	"image/color"
	"math"
)

// Color is an sRGB colour with straight alpha; A = 255 is opaque.
type Color = color.NRGBA

// Theme names colours by what they stand for. Text may be set in any of them:
// all keep the contrast of small text against Paper.
type Theme struct {
	Paper  Color // the page
	Ink    Color // text, axes
	Faint  Color // secondary text, dimensions, grid
	Ground Color // the fixed link
	Link   Color // moving links
	Rope   Color // rope, cable, belt, chain
	Load   Color // plates, stack, the load ribbon
	Arm    Color // moment arms
	Person Color // body segments, what a person can produce
	Lift   Color // concentric
	Lower  Color // eccentric
	Hold   Color // isometric
	Warn   Color // cautions
}

// Light is for white paper, Dark for a dark screen. Lift and Lower differ in
// hue on the blue-orange axis, which the common colour-vision deficiencies
// keep; still, never let colour alone tell two things apart.
var (
	Light = Theme{
		Paper:  rgb(0xffffff),
		Ink:    rgb(0x1d2329),
		Faint:  rgb(0x5f6b76),
		Ground: rgb(0x6b6257),
		Link:   rgb(0x33475b),
		Rope:   rgb(0x8a5a00),
		Load:   rgb(0x7a2e8e),
		Arm:    rgb(0x00707a),
		Person: rgb(0x2f6f3a),
		Lift:   rgb(0x1f5fbf),
		Lower:  rgb(0xb04a00),
		Hold:   rgb(0x5a5f00),
		Warn:   rgb(0xb3123a),
	}
	Dark = Theme{
		Paper:  rgb(0x14191e),
		Ink:    rgb(0xe8ecef),
		Faint:  rgb(0x9aa7b3),
		Ground: rgb(0xb5a999),
		Link:   rgb(0xa9c0d6),
		Rope:   rgb(0xe0b052),
		Load:   rgb(0xd59be6),
		Arm:    rgb(0x54c6d0),
		Person: rgb(0x86cf93),
		Lift:   rgb(0x7fb2ff),
		Lower:  rgb(0xff9d5c),
		Hold:   rgb(0xc9cf5a),
		Warn:   rgb(0xff8098),
	}
)

func rgb(hex uint32) Color {
	return Color{R: uint8(hex >> 16), G: uint8(hex >> 8), B: uint8(hex), A: 255}
}

// Alpha returns c with opacity a from 0 (clear) to 1 (as it was).
func Alpha(c Color, a float64) Color {
	c.A = uint8(math.Round(float64(c.A) * min(max(a, 0), 1)))
	return c
}

// Contrast returns the contrast ratio of two opaque colours, from 1 to 21.
// Small text needs 4.5, graphics 3.
//
// Source: W3C, Web Content Accessibility Guidelines 2.1 (2018), definitions of
// "contrast ratio" and "relative luminance"; success criteria 1.4.3, 1.4.11.
func Contrast(a, b Color) float64 {
	la, lb := luminance(a), luminance(b)
	return (max(la, lb) + 0.05) / (min(la, lb) + 0.05)
}

func luminance(c Color) float64 {
	return 0.2126*linear(c.R) + 0.7152*linear(c.G) + 0.0722*linear(c.B)
}

// linear undoes the sRGB transfer curve, with the threshold WCAG 2.1 prints.
func linear(v uint8) float64 {
	s := float64(v) / 255
	if s <= 0.03928 {
		return s / 12.92
	}
	return math.Pow((s+0.055)/1.055, 2.4)
}
