// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.model.json.internal;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.Arrays;
import java.util.Map;
import java.util.Set;

/** The content of a file as it was read, from which a later content takes over unknown fields and the spelling of numbers. */
public final class KeptFields {
    private static final String ID = "id";
    private static final int NONE = -1;

    private final ObjectNode content;
    private final ObjectNode known;
    private final Set<String> unknownPaths;

    /**
     * Takes what a file held.
     *
     * @param content the file's content
     * @param known the same as Ohmstead would write it
     * @param unknownPaths where the unknown fields of the content are
     */
    public KeptFields(ObjectNode content, ObjectNode known, Set<String> unknownPaths) {
        this.content = content;
        this.known = known;
        this.unknownPaths = unknownPaths;
    }

    /** Adds to a new content what is kept of the old one. */
    public void mergeInto(ObjectNode fresh) {
        mergeObject(fresh, content, known, JsonPaths.ROOT);
    }

    private void mergeObject(ObjectNode fresh, JsonNode before, JsonNode knownBefore, String path) {
        for (Map.Entry<String, JsonNode> field : fresh.properties()) {
            String name = field.getKey();
            JsonNode old = before.get(name);
            if (old != null && knownBefore.has(name)) {
                field.setValue(merged(field.getValue(), old, knownBefore.get(name), JsonPaths.field(path, name)));
            }
        }
        for (Map.Entry<String, JsonNode> field : before.properties()) {
            String name = field.getKey();
            if (unknownPaths.contains(JsonPaths.field(path, name)) && !fresh.has(name)) {
                fresh.set(name, field.getValue().deepCopy());
            }
        }
    }

    private JsonNode merged(JsonNode fresh, JsonNode before, JsonNode knownBefore, String path) {
        if (fresh instanceof ObjectNode object && before.isObject()) {
            mergeObject(object, before, knownBefore, path);
        } else if (fresh instanceof ArrayNode list && before.isArray()) {
            mergeList(list, before, knownBefore, path);
        } else if (fresh.isNumber() && before.isNumber() && fresh.doubleValue() == before.doubleValue()) {
            return before;
        }
        return fresh;
    }

    private void mergeList(ArrayNode fresh, JsonNode before, JsonNode knownBefore, String path) {
        int[] partners = partners(fresh, knownBefore);
        for (int index = 0; index < partners.length; index++) {
            int partner = partners[index];
            if (partner != NONE) {
                JsonNode entry = merged(
                        fresh.get(index),
                        before.get(partner),
                        knownBefore.get(partner),
                        JsonPaths.entry(path, partner));
                fresh.set(index, entry);
            }
        }
    }

    /** Returns for each entry of a new list which entry of the old one it comes from: by id, else by content, else by place. */
    private static int[] partners(JsonNode fresh, JsonNode before) {
        int[] partners = new int[fresh.size()];
        Arrays.fill(partners, NONE);
        boolean[] taken = new boolean[before.size()];
        for (Likeness likeness : Likeness.values()) {
            for (int index = 0; index < partners.length; index++) {
                if (partners[index] == NONE) {
                    partners[index] = find(fresh, index, before, taken, likeness);
                }
            }
        }
        return partners;
    }

    private static int find(JsonNode fresh, int index, JsonNode before, boolean[] taken, Likeness likeness) {
        for (int candidate = 0; candidate < taken.length; candidate++) {
            boolean like = !taken[candidate]
                    && switch (likeness) {
                        case SAME_ID ->
                            fresh.get(index).has(ID)
                                    && fresh.get(index)
                                            .get(ID)
                                            .equals(before.get(candidate).get(ID));
                        case SAME_CONTENT -> withoutId(fresh.get(index)).equals(withoutId(before.get(candidate)));
                        case SAME_PLACE ->
                            candidate == index
                                    && taken.length == fresh.size()
                                    && !fresh.get(index).has(ID);
                    };
            if (like) {
                taken[candidate] = true;
                return candidate;
            }
        }
        return NONE;
    }

    private static JsonNode withoutId(JsonNode entry) {
        if (entry.has(ID) && entry instanceof ObjectNode object) {
            ObjectNode rest = object.deepCopy();
            rest.remove(ID);
            return rest;
        }
        return entry;
    }

    private enum Likeness {
        SAME_ID,
        SAME_CONTENT,
        SAME_PLACE
    }
}
