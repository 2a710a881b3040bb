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
 *
 * <p>Words of the trade that lead here: {@index basis}, {@index bundle}, {@index caliper}, {@index count},
 * {@index cover}, {@index fold}, {@index folio}, {@index format}, {@index grammage}, {@index label}, {@index leaves},
 * {@index name}, {@index octavo}, {@index pages}, {@index pounds}, {@index quarto}, {@index quire}, {@index ream},
 * {@index sheet}, {@index sheets}, {@index text}, {@index unknown}, {@index weight}.
 */
@NullMarked
package org.papermath.format;

import org.jspecify.annotations.NullMarked;
