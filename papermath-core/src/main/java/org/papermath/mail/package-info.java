/** What the mail takes: dated limits by country. */
@NullMarked
package org.papermath.mail;

import org.jspecify.annotations.NullMarked;
