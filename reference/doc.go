// Package reference holds the published numbers about people that the rest of
// the program computes with, as CSV tables kept beside the code.
//
// Every row names its source and carries a [Mark] that says how far the number
// was followed back. Nothing here is fitted or smoothed: what is computed from
// a table is computed elsewhere and says so. Where a table disagrees with
// another copy of itself the reason for the choice stands in the comment of
// the function that reads it.
//
// Units are SI (m, kg, N·m, rad, rad/s) once a row has been read; the files
// keep the units of the publications, named in their headings.
//
//	table                      what                                     weakest mark
//	segments_deleva.csv        mass, centre, gyration by sex            two copies
//	segments_dempster.csv      the same, one set for both sexes         retrieved
//	stature_fractions.csv      segment lengths over stature             retrieved
//	survey_dimensions.csv      body dimensions of a large survey        computed
//	survey_correlations.csv    how those dimensions go together         computed
//	ranges_of_motion.csv       how far joints move                      from memory
//	torque_angle_velocity.csv  hip, knee, ankle moment coefficients     retrieved
//	strength_levels.csv        joint moments at one angle               own interpolation
//	strength_shapes.csv        how those change with the angle          own interpolation
//	static_regressions.csv     joint moment against angle               from memory
//	moment_arms.csv            elbow and shoulder muscle moment arms    retrieved
//	tendon_lengths.csv         leg muscle length against angle          from memory
package reference
