// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.model.json;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.LinkedHashMap;
import java.util.Map;
import org.ohmstead.model.json.internal.CanonicalWriter;
import org.ohmstead.model.json.internal.FieldReader;
import org.ohmstead.model.json.internal.Findings;
import org.ohmstead.model.json.internal.JsonSource;

/**
 * JSON with exactly one text for each value, fit to be hashed: the JSON Canonicalization Scheme of RFC 8785. No white space; the fields
 * of an object in the order of their names' UTF-16 code units, which for names of plain letters is the order of the alphabet; each
 * number as the shortest text that reads back to the same double, in the form of ECMAScript (4, 4.02, 1e-7, 1e+21); negative zero as 0.
 */
public final class CanonicalJson {
    private CanonicalJson() {}

    /**
     * Returns the canonical text of a JSON value. Numbers are taken as doubles.
     *
     * @throws IllegalArgumentException when a number is not finite as a double, or a text holds half of a surrogate pair
     */
    public static String write(JsonNode node) {
        return CanonicalWriter.write(node);
    }

    /** Returns the canonical text of an object whose fields are all texts. */
    public static String writeTexts(Map<String, String> fields) {
        ObjectNode object = JsonNodeFactory.instance.objectNode();
        fields.forEach(object::put);
        return write(object);
    }

    /**
     * Returns the fields of an object whose fields are all texts, in the order of the text.
     *
     * @throws ProjectFileException when the text is not JSON, or not such an object
     */
    public static Map<String, String> readTexts(String json) throws ProjectFileException {
        JsonSource source = JsonSource.named("file.label.entry", json);
        FieldReader in = FieldReader.root(source, source.parse(), new Findings());
        Map<String, String> fields = new LinkedHashMap<>();
        for (String name : in.names()) {
            fields.put(name, in.requiredText(name, "field.text"));
        }
        return fields;
    }
}
