/**
 * Envelopes: blank, folds, pocket, and whether a card fits. An envelope is laid out around what goes in: its size, its thickness,
 * the play wanted, seams and flap.
 *
 * <pre>{@code
 * Envelope envelope = Envelope.forCard(EnvelopeStyle.DIAMOND, mm(120), mm(170), mm(0.45), EnvelopeAllowances.from(Assumptions.standard()))
 *         .ofPaper(mm(0.18));
 * envelope.blank(); // outline of 4 corners, 320.9 mm × 320.9 mm
 * }</pre>
 *
 * <p>Card and envelope both scatter, so a fit is a chance: {@link org.papermath.envelope.EnvelopeFit} says how many pairs in a hundred
 * go together, dry and in damp air. The blank can be formed in a deckle of its outline, and then shrinks with its sheet.
 *
 * <p>Words of the trade that lead here: {@index clearance}, {@index envelope}, {@index play}, {@index tight}.
 */
@NullMarked
package org.papermath.envelope;

import org.jspecify.annotations.NullMarked;
