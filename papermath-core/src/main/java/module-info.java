/**
 * Units-aware arithmetic for people who make paper by hand: quantities, evidence, models, plans.
 *
 * <p>Public methods take and return quantities of a named kind; loops inside run on plain numbers in coherent SI.
 * Nothing here reads a clock, a locale, a file or the network. Null is nowhere an argument unless a parameter says so;
 * static methods, builders and records of input answer it with a {@link NullPointerException} that names the argument.
 */
module org.papermath.core {
    requires transitive java.measure;
    requires tech.units.indriya;
    requires static transitive java.desktop;
    requires static org.apiguardian.api;
    requires static org.jspecify;
    requires org.apache.commons.numbers.rootfinder;
    requires org.apache.commons.statistics.distribution;

    exports org.papermath.air;
    exports org.papermath.card;
    exports org.papermath.colour;
    exports org.papermath.cost;
    exports org.papermath.drawing;
    exports org.papermath.drying;
    exports org.papermath.envelope;
    exports org.papermath.evidence;
    exports org.papermath.fibre;
    exports org.papermath.format;
    exports org.papermath.mail;
    exports org.papermath.mould;
    exports org.papermath.order;
    exports org.papermath.plan;
    exports org.papermath.press;
    exports org.papermath.pulp;
    exports org.papermath.quantity;
    exports org.papermath.shape;
    exports org.papermath.record;
    exports org.papermath.schedule;
    exports org.papermath.sheet;
    exports org.papermath.vat;
    exports org.papermath.whatif;
}
