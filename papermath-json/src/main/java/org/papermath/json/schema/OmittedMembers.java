package org.papermath.json.schema;

import java.util.Optional;

/**
 * What it means when a member is left out.
 *
 * @param value the value that stands for it, as JSON has it, if it is one
 * @param words the same for people, to follow on "If left out:"
 */
record OmittedMembers(Optional<Object> value, String words) {
    /** A value stands for the member. */
    static OmittedMembers is(Object value, String words) {
        return new OmittedMembers(Optional.of(value), words);
    }

    /** Something happens, or nothing does. */
    static OmittedMembers then(String words) {
        return new OmittedMembers(Optional.empty(), words);
    }
}
