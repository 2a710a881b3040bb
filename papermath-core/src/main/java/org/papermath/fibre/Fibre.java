package org.papermath.fibre;

import java.util.List;
import java.util.Objects;
import org.papermath.evidence.Scope;
import org.papermath.quantity.Name;
import org.papermath.quantity.Refused;

/**
 * A papermaking fibre: who it is, not what it does. Immutable.
 *
 * <p>Its numbers are assumptions found by its {@linkplain #scope() scope}. A fibre may have kin, which is asked where
 * the fibre itself has no value: a second-cut linter is a linter, and a linter is cotton.
 */
public final class Fibre {
    private final String id;
    private final String name;
    private final SourceClass sourceClass;
    private final List<String> kin;
    private final Scope scope;

    /** The part of a plant, or the earlier use, a fibre comes from. */
    public enum SourceClass {
        /** Hair of a seed, such as cotton linter. */
        SEED_HAIR,
        /** Cloth that was worn or cut. */
        RAG,
        /** Inner bark or the skin of a stem. */
        BAST,
        /** Leaf or leaf sheath. */
        LEAF,
        /** Grass and straw. */
        GRASS,
        /** Pulped wood. */
        WOOD
    }

    private Fibre(String id, String name, SourceClass sourceClass, List<String> kin, Scope scope) {
        this.id = id;
        this.name = name;
        this.sourceClass = sourceClass;
        this.kin = kin;
        this.scope = scope;
    }

    /**
     * Makes a fibre of one's own.
     *
     * @param id the subject its values are kept under, for example {@code milkweed}
     * @param name its name for people, not empty
     * @param sourceClass what it comes from
     * @param kin the ids asked after its own, from near to far; none if nothing is like it
     * @return the fibre
     * @throws Refused if the id, a kin or the name is empty, or an id holds one of {@code [ ] @}
     */
    public static Fibre of(String id, String name, SourceClass sourceClass, String... kin) {
        Objects.requireNonNull(id, "id");
        Objects.requireNonNull(name, "name");
        Objects.requireNonNull(sourceClass, "sourceClass");
        Objects.requireNonNull(kin, "kin");
        String called = Name.check(name, "fibre");
        if (called.isEmpty()) {
            throw Refused.of("fibre.unnamed", "fibre " + Name.shown(id) + ": the name is empty; give one.", "id", id);
        }
        String[] subjects = new String[kin.length + 1];
        subjects[0] = Name.check(id, "id of the fibre");
        for (int k = 0; k < kin.length; k++) {
            subjects[k + 1] = Name.check(kin[k], "kin of the fibre");
        }
        return new Fibre(
                subjects[0], called, sourceClass, List.of(subjects).subList(1, subjects.length), Scope.of(subjects));
    }

    /**
     * Returns the subject its values are kept under.
     *
     * @return the id
     */
    public String id() {
        return id;
    }

    /**
     * Returns its name for people.
     *
     * @return the name
     */
    public String name() {
        return name;
    }

    /**
     * Returns what it comes from.
     *
     * @return the class
     */
    public SourceClass sourceClass() {
        return sourceClass;
    }

    /**
     * Returns the ids asked where the fibre itself has no value.
     *
     * @return an unmodifiable list from near to far
     */
    public List<String> kin() {
        return kin;
    }

    /**
     * Returns the scope of its values.
     *
     * @return the fibre, then its kin
     */
    public Scope scope() {
        return scope;
    }

    @Override
    public boolean equals(Object other) {
        return other instanceof Fibre that
                && id.equals(that.id)
                && name.equals(that.name)
                && sourceClass == that.sourceClass
                && kin.equals(that.kin);
    }

    @Override
    public int hashCode() {
        return Objects.hash(id, name, sourceClass, kin);
    }

    @Override
    public String toString() {
        return name;
    }
}
