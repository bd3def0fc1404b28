// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.model.json.internal;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.DecimalNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.math.BigDecimal;
import java.util.List;
import java.util.OptionalDouble;
import java.util.function.Function;

/** Builds one JSON object field by field, in the order of the calls. */
final class ObjectBuilder {
    private final ObjectNode object = JsonNodeFactory.instance.objectNode();

    private ObjectBuilder() {}

    static ObjectBuilder begin() {
        return new ObjectBuilder();
    }

    ObjectBuilder text(String name, String value) {
        object.put(name, value);
        return this;
    }

    ObjectBuilder number(String name, double value) {
        object.set(name, number(value));
        return this;
    }

    ObjectBuilder number(String name, OptionalDouble value) {
        value.ifPresent(present -> number(name, present));
        return this;
    }

    ObjectBuilder whole(String name, int value) {
        object.put(name, value);
        return this;
    }

    ObjectBuilder flag(String name, boolean value) {
        object.put(name, value);
        return this;
    }

    ObjectBuilder choice(String name, Enum<?> value) {
        return text(name, EnumNames.of(value));
    }

    ObjectBuilder node(String name, JsonNode value) {
        object.set(name, value);
        return this;
    }

    <T> ObjectBuilder list(String name, List<T> values, Function<T, JsonNode> entry) {
        ArrayNode list = JsonNodeFactory.instance.arrayNode();
        values.forEach(value -> list.add(entry.apply(value)));
        object.set(name, list);
        return this;
    }

    ObjectBuilder texts(String name, List<String> values) {
        return list(name, values, JsonNodeFactory.instance::textNode);
    }

    ObjectNode end() {
        return object;
    }

    // The shortest decimal reads back to the same double and is spelled as a person would: 4 and not 4.0.
    private static JsonNode number(double value) {
        return DecimalNode.valueOf(new BigDecimal(CanonicalWriter.number(value)));
    }
}
