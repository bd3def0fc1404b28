// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.model.json.internal;

import com.fasterxml.jackson.core.JsonLocation;
import com.fasterxml.jackson.core.JsonParser;
import com.fasterxml.jackson.core.JsonToken;
import java.io.IOException;
import java.util.ArrayDeque;
import java.util.Deque;

/**
 * A place in a text. Places are looked up by reading the text once more, only when there is something to say about them, so that a
 * good file costs neither time nor memory for them.
 *
 * @param line counted from 1
 * @param column in characters, counted from 1
 */
record Place(int line, int column) {
    static Place of(JsonLocation location) {
        return new Place(Math.max(1, location.getLineNr()), Math.max(1, location.getColumnNr()));
    }

    /** Returns where the value at a path begins, or the innermost value around it that is there. */
    static Place find(String text, String path) {
        Place best = new Place(1, 1);
        int bestLength = 0;
        try (JsonParser parser = TreeParser.open(text)) {
            Walk walk = new Walk();
            for (JsonToken token = parser.nextToken(); token != null; token = parser.nextToken()) {
                String here = walk.step(token, parser);
                if (here != null && here.length() > bestLength && leadsTo(here, path)) {
                    best = of(parser.currentTokenLocation());
                    bestLength = here.length();
                }
                if (bestLength == path.length()) {
                    return best;
                }
            }
        } catch (IOException brokenFurtherOn) {
            return best;
        }
        return best;
    }

    private static boolean leadsTo(String here, String path) {
        return path.startsWith(here)
                && (path.length() == here.length()
                        || path.charAt(here.length()) == '.'
                        || path.charAt(here.length()) == '[');
    }

    /** Follows the path of each value through a stream of tokens. */
    private static final class Walk {
        private final Deque<Level> levels = new ArrayDeque<>();

        /** Returns the path of the value that a token begins, or null when it begins none. */
        String step(JsonToken token, JsonParser parser) throws IOException {
            if (token == JsonToken.END_OBJECT || token == JsonToken.END_ARRAY) {
                levels.pop();
                return null;
            }
            if (token == JsonToken.FIELD_NAME) {
                levels.element().name = parser.currentName();
                return null;
            }
            String here = levels.isEmpty() ? JsonPaths.ROOT : levels.element().next();
            if (token.isStructStart()) {
                levels.push(new Level(here, token == JsonToken.START_ARRAY));
            }
            return here;
        }
    }

    private static final class Level {
        private final String path;
        private final boolean list;
        private int index;
        private String name = "";

        Level(String path, boolean list) {
            this.path = path;
            this.list = list;
        }

        String next() {
            if (!list) {
                return JsonPaths.field(path, name);
            }
            String here = JsonPaths.entry(path, index);
            index++;
            return here;
        }
    }
}
