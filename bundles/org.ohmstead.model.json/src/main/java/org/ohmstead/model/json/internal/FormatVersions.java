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
import org.ohmstead.units.text.Messages;

/**
 * The versions of a file format and how an older file becomes one of today.
 *
 * @param current the version that is read and written, at least 1
 * @param steps how to go from version 1 to 2, from 2 to 3 and so on: one fewer than {@code current}. A step gets a tree of its own and
 *     may change it; the version number itself is not its business.
 */
public record FormatVersions(int current, List<UnaryOperator<ObjectNode>> steps) {
    private static final Messages TEXTS = Messages.of(FormatVersions.class);
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
            throw source.fault(JsonPaths.ROOT, TEXTS.text("version.noObject", FieldReader.describe(root), FIELD));
        }
        int version = version(source, object);
        if (version > current) {
            throw source.fault(
                    JsonPaths.field(JsonPaths.ROOT, FIELD),
                    TEXTS.text("version.newer", String.valueOf(version), String.valueOf(current)));
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
                TEXTS.text("version.older", String.valueOf(version), String.valueOf(current)),
                TEXTS.text("version.older.remedy")));
        return migrated;
    }

    private static int version(JsonSource source, ObjectNode root) throws ProjectFileException {
        JsonNode version = root.get(FIELD);
        String path = JsonPaths.field(JsonPaths.ROOT, FIELD);
        if (version == null) {
            throw source.fault(path, TEXTS.text("version.missing", FIELD));
        }
        if (!version.isInt() || version.intValue() < 1) {
            throw source.fault(path, TEXTS.text("version.wrong", FieldReader.describe(version)));
        }
        return version.intValue();
    }
}
