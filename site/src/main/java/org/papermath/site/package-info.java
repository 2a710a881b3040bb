/** The generator of the guide pages. */
@org.jspecify.annotations.NullMarked
package org.papermath.site;
