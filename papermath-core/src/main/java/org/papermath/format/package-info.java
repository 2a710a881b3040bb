/**
 * Formats of paper and envelopes by standard and trade, and what their weights are based on: reams, single sheets. A weight in
 * pounds says nothing without the sheet and the count of the ream; where these are missing the library asks back.
 *
 * <pre>{@code
 * Formats.ISO_A5.width(); // 148 mm
 * ReamBasis.COVER.pounds(80).to(GSM); // 216.3 g/m²
 * ReamBasis.TEXT.pounds(80).to(GSM); // 118.4 g/m²
 * Substance.ofSheets(grams(62.5), 10, mm(148), mm(205)); // 206 g/m²
 * }</pre>
 *
 * <p>An old name has a use, a country and a year; the same name can stand for several sizes.
 */
@NullMarked
package org.papermath.format;

import org.jspecify.annotations.NullMarked;
