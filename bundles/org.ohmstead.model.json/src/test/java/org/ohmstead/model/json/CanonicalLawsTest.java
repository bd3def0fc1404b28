// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.model.json;

import static org.junit.jupiter.api.Assertions.assertEquals;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Map;
import java.util.Random;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;

/** The canonical text is the only one: read and written again it stays, and the order of fields does not matter (RFC 8785). */
class CanonicalLawsTest {
    private static final ObjectMapper MAPPER = new ObjectMapper();

    @Property(seed = "20261211", tries = 300)
    void readAndWrittenAgainItStays(@ForAll("values") JsonNode value) throws Exception {
        String text = CanonicalJson.write(value);
        assertEquals(text, CanonicalJson.write(MAPPER.readTree(text)));
    }

    @Property(seed = "20261212", tries = 200)
    void theOrderOfFieldsDoesNotMatter(@ForAll("values") JsonNode value, @ForAll Random random) {
        assertEquals(CanonicalJson.write(value), CanonicalJson.write(shuffled(value, random)));
    }

    @Property(seed = "20261213", tries = 300)
    void everyNumberReadsBackExactly(@ForAll("numbers") double number) throws Exception {
        String text = CanonicalJson.write(JsonNodeFactory.instance.numberNode(number));
        double read = MAPPER.readTree(text).doubleValue();
        assertEquals(number == 0 ? 0.0 : number, read == 0 ? 0.0 : read, text);
    }

    @Property(seed = "20261214", tries = 200)
    void textsByNameComeBack(@ForAll("fields") Map<String, String> fields) throws Exception {
        assertEquals(fields, CanonicalJson.readTexts(CanonicalJson.writeTexts(fields)));
    }

    @Provide
    Arbitrary<Double> numbers() {
        Arbitrary<Double> bits =
                Arbitraries.longs().map(Double::longBitsToDouble).filter(Double::isFinite);
        return Arbitraries.oneOf(
                bits,
                Arbitraries.integers().map(Integer::doubleValue),
                Arbitraries.of(0.0, -0.0, 1e21, 1e20, 1e-6, 1e-7, Double.MIN_VALUE, Double.MAX_VALUE));
    }

    @Provide
    Arbitrary<Map<String, String>> fields() {
        return Arbitraries.maps(names(), texts()).ofMaxSize(6);
    }

    @Provide
    Arbitrary<JsonNode> values() {
        JsonNodeFactory nodes = JsonNodeFactory.instance;
        Arbitrary<JsonNode> leaves = Arbitraries.oneOf(
                numbers().map(nodes::numberNode),
                texts().map(nodes::textNode),
                Arbitraries.of(true, false).map(nodes::booleanNode),
                Arbitraries.just(nodes.nullNode()));
        return Arbitraries.recursive(
                () -> leaves,
                inner -> Arbitraries.oneOf(
                        inner,
                        inner.list().ofMaxSize(4).map(list -> nodes.arrayNode().addAll(list)),
                        Arbitraries.maps(names(), inner).ofMaxSize(4).map(map -> {
                            ObjectNode object = nodes.objectNode();
                            map.forEach(object::set);
                            return object;
                        })),
                0,
                3);
    }

    private static Arbitrary<String> names() {
        return Arbitraries.of(
                "a", "b", "ab", "B", "\u20ac", "\u00f6", "\ud83d\ude00", "\ufb33", "1", "with space", "\"");
    }

    private static Arbitrary<String> texts() {
        return Arbitraries.strings()
                .withChars('a', 'Z', '"', '\\', '/', '\n', '\t', '\u0001', '\u007f', '\u00e4', '\u2028', '\u03a9')
                .ofMaxLength(8);
    }

    private static JsonNode shuffled(JsonNode value, Random random) {
        if (!value.isObject()) {
            return value;
        }
        List<String> names = new ArrayList<>();
        value.fieldNames().forEachRemaining(names::add);
        Collections.shuffle(names, random);
        ObjectNode object = JsonNodeFactory.instance.objectNode();
        names.forEach(name -> object.set(name, shuffled(value.get(name), random)));
        return object;
    }
}
