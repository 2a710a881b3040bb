/**
 * What the mail takes: dated limits by country. They are data with a day and a source, not rules of the library; a plan whose
 * date lies more than a year past them says so.
 *
 * <pre>{@code
 * MailLimits.Verdict verdict = MailLimits.of("United States")
 *         .check(mm(140), mm(100), mm(0.3), grams(5), LocalDate.of(2026, 11, 28));
 * verdict; // United States: postcard
 * }</pre>
 *
 * <p>The library holds no postage; {@link org.papermath.cost.PostageTable} takes yours.
 *
 * <p>Words of the trade that lead here: {@index aspect}, {@index country}, {@index date}, {@index letter},
 * {@index limits}, {@index mail}, {@index postage}.
 */
@NullMarked
package org.papermath.mail;

import org.jspecify.annotations.NullMarked;
