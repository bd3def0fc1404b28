// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.model.json.internal;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.List;
import java.util.function.UnaryOperator;
import org.ohmstead.model.Problem;
import org.ohmstead.model.Severity;
import org.ohmstead.model.json.ProjectFileException;

/**
 * The versions of a file format and how an older file becomes one of today.
 *
 * @param current the version that is read and written, at least 1
 * @param steps how to go from version 1 to 2, from 2 to 3 and so on: one fewer than {@code current}. A step gets a tree of its own and
 *     may change it; the version number itself is not its business.
 */
public record FormatVersions(int current, List<UnaryOperator<ObjectNode>> steps) {
    /** Name of the field that holds the version. */
    public static final String FIELD = "formatVersion";

    /** Checks that there is a step for each older version. */
    public FormatVersions {
        steps = List.copyOf(steps);
        if (steps.size() != current - 1) {
            throw new IllegalArgumentException(
                    "steps has " + steps.size() + " entries; version " + current + " needs " + (current - 1));
        }
    }

    /** Returns a tree in the current version; refuses one that is newer, or not an object with a version. */
    public ObjectNode migrate(JsonSource source, JsonNode root, Findings findings) throws ProjectFileException {
        if (!(root instanceof ObjectNode object)) {
            throw source.fault(
                    JsonPaths.ROOT,
                    "the file holds " + FieldReader.describe(root)
                            + ", but an object is needed. It begins with { and its first field is \"" + FIELD + "\".");
        }
        int version = version(source, object);
        if (version > current) {
            throw source.fault(
                    JsonPaths.field(JsonPaths.ROOT, FIELD),
                    "the file is of format version " + version + ", but this Ohmstead reads versions up to " + current
                            + ". Update Ohmstead to open it. The file was not touched.");
        }
        if (version == current) {
            return object;
        }
        ObjectNode migrated = object.deepCopy();
        for (int step = version; step < current; step++) {
            migrated = steps.get(step - 1).apply(migrated);
        }
        migrated.put(FIELD, current);
        findings.add(new Problem(
                Severity.NOTE,
                JsonPaths.field(JsonPaths.ROOT, FIELD),
                "The file is of format version " + version + "; it was read as version " + current + ".",
                "Save it to bring the file itself up to date; an older Ohmstead cannot read it then."));
        return migrated;
    }

    private static int version(JsonSource source, ObjectNode root) throws ProjectFileException {
        JsonNode version = root.get(FIELD);
        String path = JsonPaths.field(JsonPaths.ROOT, FIELD);
        if (version == null) {
            throw source.fault(
                    path,
                    "the field \"" + FIELD + "\" is missing, so the file cannot be told from another kind of JSON."
                            + " Begin the object with \"" + FIELD + "\": 1.");
        }
        if (!version.isInt() || version.intValue() < 1) {
            throw source.fault(
                    path,
                    "the value is " + FieldReader.describe(version)
                            + ", but a whole number of at least 1 is needed: the version of the file format.");
        }
        return version.intValue();
    }
}
