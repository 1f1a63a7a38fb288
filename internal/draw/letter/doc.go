// Package letter answers: what does a rink's manager with two minutes read before
// saying yes or no to photo holes?
//
// [Gather] works out what a step of a choice brings and risks; [Content.PDF] sets
// it on one upright page:
//
//	choice -> step asked for -> gain, guard -> Content -> one page
//
// The page: what is asked, on a map and hole by hole; why; what it costs beside the
// steps that matter; what is gained over shooting through the pane; what comes
// through; cautions and whom to ask; for what it is proved; lines to sign on.
//
// Assumptions and limits are those of the packages it calls; it adds no model.
// The bytes depend on nothing but the choice, the kit and the options.
package letter
