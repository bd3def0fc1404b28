// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.model.json.internal;

import com.fasterxml.jackson.core.JsonFactory;
import com.fasterxml.jackson.core.JsonFactoryBuilder;
import com.fasterxml.jackson.core.JsonParser;
import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.core.JsonToken;
import com.fasterxml.jackson.core.StreamReadConstraints;
import com.fasterxml.jackson.core.exc.StreamConstraintsException;
import com.fasterxml.jackson.core.io.JsonEOFException;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.DecimalNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.io.IOException;
import java.math.BigDecimal;
import java.math.BigInteger;
import org.ohmstead.model.json.ProjectFileException;
import org.ohmstead.units.text.Messages;

/** Reads a JSON text into a tree, strictly: no field twice, nothing behind the end, no number out of reach, bounded depth. */
final class TreeParser {
    private static final Messages TEXTS = Messages.of(TreeParser.class);
    private static final int DEEPEST = 64;
    private static final int LONGEST_NUMBER = 400;
    private static final int LARGEST_EXPONENT = 400;

    private static final JsonFactory FACTORY = new JsonFactoryBuilder()
            .streamReadConstraints(StreamReadConstraints.builder()
                    .maxNestingDepth(DEEPEST)
                    .maxNumberLength(LONGEST_NUMBER)
                    .maxStringLength(JsonSource.LARGEST_BYTES)
                    .build())
            .build();

    private final JsonSource source;
    private final JsonParser parser;

    private TreeParser(JsonSource source, JsonParser parser) {
        this.source = source;
        this.parser = parser;
    }

    static JsonParser open(String text) throws IOException {
        return FACTORY.createParser(text);
    }

    static JsonNode parse(JsonSource source) throws ProjectFileException {
        try (JsonParser parser = open(source.text())) {
            TreeParser reader = new TreeParser(source, parser);
            parser.nextToken();
            JsonNode root = reader.value(JsonPaths.ROOT);
            if (parser.nextToken() != null) {
                throw reader.here(JsonPaths.ROOT, TEXTS.text("json.more"), null);
            }
            return root;
        } catch (StreamConstraintsException tooMuch) {
            throw at(
                    source,
                    tooMuch,
                    TEXTS.text("json.tooMuch", String.valueOf(DEEPEST), String.valueOf(LONGEST_NUMBER)));
        } catch (JsonProcessingException broken) {
            throw at(source, broken, endsEarly(broken) ? TEXTS.text("json.endsEarly") : invalid(broken));
        } catch (IOException failure) {
            throw new ProjectFileException(
                    source.label(), TEXTS.text("json.unreadable", source.label(), AtomicFile.reason(failure)), failure);
        }
    }

    // Between two entries of an object or list, the parser reports the end of its input as any other fault.
    private static boolean endsEarly(JsonProcessingException broken) {
        return broken instanceof JsonEOFException
                || plain(broken.getOriginalMessage()).startsWith("Unexpected end-of-input");
    }

    private static String invalid(JsonProcessingException broken) {
        return TEXTS.text("json.invalid", plain(broken.getOriginalMessage()));
    }

    private static ProjectFileException at(JsonSource source, JsonProcessingException failure, String sentence) {
        Place place = failure.getLocation() == null ? new Place(1, 1) : Place.of(failure.getLocation());
        return new ProjectFileException(
                source.label(), place.line(), place.column(), JsonPaths.ROOT, sentence, failure);
    }

    private static String plain(String message) {
        return message.replaceAll("\\s*\\(code \\d+[^)]*\\)", "").replaceAll("[.\\s]+$", "");
    }

    private ProjectFileException here(String path, String sentence, Throwable cause) {
        Place place = Place.of(parser.currentTokenLocation());
        return new ProjectFileException(source.label(), place.line(), place.column(), path, sentence, cause);
    }

    // The depth of this recursion is bounded by the factory's constraint.
    private JsonNode value(String path) throws IOException, ProjectFileException {
        JsonToken token = parser.currentToken();
        return switch (token) {
            case START_OBJECT -> object(path);
            case START_ARRAY -> list(path);
            case VALUE_STRING -> text(path, parser.getText());
            case VALUE_NUMBER_INT, VALUE_NUMBER_FLOAT -> number(path, token == JsonToken.VALUE_NUMBER_INT);
            case VALUE_TRUE, VALUE_FALSE -> JsonNodeFactory.instance.booleanNode(token == JsonToken.VALUE_TRUE);
            case VALUE_NULL -> JsonNodeFactory.instance.nullNode();
            default -> throw new IllegalStateException("a strict JSON parser gave " + token + " at " + path);
        };
    }

    /** Half of a surrogate pair, which an escape can bring in, could never be written again; in names the parser itself refuses it. */
    private JsonNode text(String path, String text) throws ProjectFileException {
        if (text.codePoints().anyMatch(c -> c >= Character.MIN_SURROGATE && c <= Character.MAX_SURROGATE)) {
            throw here(path, TEXTS.text("json.halfCharacter"), null);
        }
        return JsonNodeFactory.instance.textNode(text);
    }

    private ObjectNode object(String path) throws IOException, ProjectFileException {
        ObjectNode object = JsonNodeFactory.instance.objectNode();
        while (parser.nextToken() != JsonToken.END_OBJECT) {
            String name = parser.currentName();
            String fieldPath = JsonPaths.field(path, name);
            if (object.has(name)) {
                throw here(fieldPath, TEXTS.text("json.twice", name), null);
            }
            parser.nextToken();
            object.set(name, value(fieldPath));
        }
        return object;
    }

    private ArrayNode list(String path) throws IOException, ProjectFileException {
        ArrayNode list = JsonNodeFactory.instance.arrayNode();
        while (parser.nextToken() != JsonToken.END_ARRAY) {
            list.add(value(JsonPaths.entry(path, list.size())));
        }
        return list;
    }

    private JsonNode number(String path, boolean whole) throws IOException, ProjectFileException {
        String digits = parser.getText();
        try {
            if (whole) {
                return wholeNumber(new BigInteger(digits));
            }
            BigDecimal value = new BigDecimal(digits);
            boolean inReach = Math.abs((long) value.precision() - value.scale()) <= LARGEST_EXPONENT
                    && Double.isFinite(value.doubleValue())
                    && (value.signum() == 0 || value.doubleValue() != 0);
            if (inReach) {
                return DecimalNode.valueOf(value);
            }
            throw here(path, outOfReach(digits), null);
        } catch (NumberFormatException outOfRange) {
            throw here(path, outOfReach(digits), outOfRange);
        }
    }

    private static JsonNode wholeNumber(BigInteger value) {
        return value.bitLength() < Integer.SIZE
                ? JsonNodeFactory.instance.numberNode(value.intValue())
                : JsonNodeFactory.instance.numberNode(value);
    }

    private static String outOfReach(String digits) {
        return TEXTS.text("json.outOfReach", digits);
    }
}
