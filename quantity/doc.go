// Package quantity reads and writes what a coach notes down: a number with its
// unit and its plus-minus, such as 812±3 mm, 17 1/2 in or 45 lb.
//
// Inside, every value is in SI: m, kg, s, N, N·m, rad and their combinations.
// A [Quantity] remembers the unit it was written in, so that it can be shown
// the way its owner thinks of it.
//
// # What ± means
//
// The number after ± is the half-width of the band that about 19 in 20 careful
// repeats of the measurement would fall in: an expanded uncertainty with
// coverage factor k = 2, for an error that is close to normally distributed.
// The standard uncertainty, which is what adds in squares, is therefore half of
// it: [Quantity.Standard]. No ± means that no band is known, not that the value
// is exact.
//
// Source: JCGM 100:2008 (GUM), 2.3.5 expanded uncertainty, 2.3.6 coverage
// factor, 6.3 choosing one; k = 2 for about 95 % under a normal distribution,
// NIST TN 1297 (1994), 6.2.
//
// # What is read
//
//	812±3 mm   812 mm ± 3   1.2 m ± 5 mm   812 mm ±0.5 %   812 ±0.5 % mm
//	17.5 in    2,5 kg       17 1/2 in      17-1/2"         ½ in   1.2e3 N
//	5 ft 11 in   5'11"      90°            1/2 turn        45 lbs
//
// +/- and +- stand for ±. A unit written once counts for both numbers, and a
// comma may stand for the decimal point. After ± a percentage is a share of the
// value. Where the value is itself a percentage it is not: 50 % ± 5 % is 45 % to
// 55 %. Capitals do not matter, except that mPa is refused.
//
// Whatever could be taken in two ways is refused, with both ways named: 1,234
// (1234 or 1.234), 1 234, 010 (octal elsewhere), 1_000, 0x10, 17-19 in. A mass
// is never taken for a force: a hanging scale that shows 20 kg pulls with
// 20 kgf, and whether kg stands for a load's mass or for a reading of pull
// decides which of two results is meant, so the writer says it.
package quantity
