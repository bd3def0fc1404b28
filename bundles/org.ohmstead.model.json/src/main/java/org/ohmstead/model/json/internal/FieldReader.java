// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.model.json.internal;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.JsonNodeType;
import java.time.Instant;
import java.time.LocalDate;
import java.time.format.DateTimeParseException;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.function.Supplier;
import java.util.stream.Collectors;
import org.ohmstead.model.json.ProjectFileException;
import org.ohmstead.units.text.Messages;

/**
 * Reads the fields of one object and says of each fault where it is, what is wrong and what would be right. What is never asked for is
 * an unknown field.
 *
 * <p>What a field is, and the form that it needs, is given as the name of a text of this package.
 */
public final class FieldReader {
    private static final Messages TEXTS = Messages.of(FieldReader.class);
    private static final int LONGEST_SHOWN = 60;
    private static final String DAY = "needs.day";
    private static final String MOMENT = "needs.moment";

    /** Reads one entry of a list. */
    @FunctionalInterface
    public interface EntryReader<T> {
        /** Returns the entry that an object holds. */
        T read(FieldReader entry) throws ProjectFileException;
    }

    private final JsonSource source;
    private final JsonNode object;
    private final String path;
    private final Findings findings;
    private final Set<String> asked = new HashSet<>();
    private final Map<String, String> wanted = new HashMap<>();

    private FieldReader(JsonSource source, JsonNode object, String path, Findings findings) {
        this.source = source;
        this.object = object;
        this.path = path;
        this.findings = findings;
    }

    /** Returns a reader of the outermost object, whose format version counts as read. */
    public static FieldReader root(JsonSource source, JsonNode root, Findings findings) throws ProjectFileException {
        FieldReader reader = at(source, root, JsonPaths.ROOT, findings, "fields.whole");
        reader.asked.add(FormatVersions.FIELD);
        return reader;
    }

    /** Returns the entries of a list of objects that lies at a path; what is not a list is a fault there. */
    public static <T> List<T> list(JsonSource source, JsonNode list, String path, String what, EntryReader<T> reader)
            throws ProjectFileException {
        if (!list.isArray()) {
            throw source.fault(path, wrong(list, "needs.list", what));
        }
        Findings findings = new Findings();
        List<T> entries = new ArrayList<>();
        for (JsonNode entry : list) {
            entries.add(reader.read(at(source, entry, JsonPaths.entry(path, entries.size()), findings, what)));
        }
        return entries;
    }

    private static FieldReader at(JsonSource source, JsonNode node, String path, Findings findings, String what)
            throws ProjectFileException {
        if (!node.isObject()) {
            throw source.fault(path, wrong(node, "needs.object", what));
        }
        return new FieldReader(source, node, path, findings);
    }

    /** Returns the names of all fields, in the order of the text. */
    public List<String> names() {
        return object.properties().stream().map(Map.Entry::getKey).toList();
    }

    /** Returns a text that must be there; a blank one is refused by the record that takes it. */
    public String requiredText(String name, String what) throws ProjectFileException {
        return asText(name, required(name, "needs.text", what), what);
    }

    /** Returns a text that may be left out, which then is empty. */
    public String text(String name) throws ProjectFileException {
        Optional<JsonNode> value = optional(name);
        return value.isPresent() ? asText(name, value.get(), "needs.text.optional") : "";
    }

    private String asText(String name, JsonNode value, String what) throws ProjectFileException {
        if (!value.isTextual()) {
            throw fault(name, wrong(value, "needs.text.quoted", what));
        }
        return value.textValue();
    }

    /** Returns a number that must be there. */
    public double number(String name, String what) throws ProjectFileException {
        return asNumber(fieldPath(name), required(name, "needs.number", what), what);
    }

    /** Returns a number that may be left out. */
    public OptionalDouble optionalNumber(String name, String what) throws ProjectFileException {
        wanted.put(name, what);
        Optional<JsonNode> value = optional(name);
        return value.isPresent()
                ? OptionalDouble.of(asNumber(fieldPath(name), value.get(), what))
                : OptionalDouble.empty();
    }

    private double asNumber(String valuePath, JsonNode value, String what) throws ProjectFileException {
        if (!value.isNumber() || !Double.isFinite(value.doubleValue())) {
            throw source.fault(valuePath, wrong(value, "needs.number", what));
        }
        return value.doubleValue();
    }

    /** Returns a whole number that must be there; {@code 4.0} counts as one. */
    public int whole(String name, String what) throws ProjectFileException {
        JsonNode value = required(name, "needs.whole", what);
        double number = value.isNumber() ? value.doubleValue() : Double.NaN;
        if (number != Math.rint(number) || Math.abs(number) > Integer.MAX_VALUE) {
            throw fault(name, wrong(value, "needs.whole", what));
        }
        return (int) number;
    }

    /** Returns a list of numbers that must be there. */
    public List<Double> numbers(String name, String what) throws ProjectFileException {
        JsonNode list = required(name, "needs.numbers", what);
        if (!list.isArray()) {
            throw fault(name, wrong(list, "needs.numbers.written", what));
        }
        List<Double> numbers = new ArrayList<>();
        for (JsonNode entry : list) {
            numbers.add(asNumber(JsonPaths.entry(fieldPath(name), numbers.size()), entry, what));
        }
        return numbers;
    }

    /** Returns a list of texts, empty when it is left out. */
    public List<String> texts(String name, String what) throws ProjectFileException {
        List<String> texts = new ArrayList<>();
        for (JsonNode entry : entries(name, what)) {
            if (!entry.isTextual()) {
                throw source.fault(
                        JsonPaths.entry(fieldPath(name), texts.size()), wrong(entry, "needs.text.quoted", what));
            }
            texts.add(entry.textValue());
        }
        return texts;
    }

    /** Returns a yes or no that must be there. */
    public boolean flag(String name, String what) throws ProjectFileException {
        return asFlag(name, required(name, "needs.flag", what), what);
    }

    /** Returns a yes or no; no when it is left out. */
    public boolean optionalFlag(String name, String what) throws ProjectFileException {
        Optional<JsonNode> value = optional(name);
        return value.isPresent() && asFlag(name, value.get(), what);
    }

    private boolean asFlag(String name, JsonNode value, String what) throws ProjectFileException {
        if (!value.isBoolean()) {
            throw fault(name, wrong(value, "needs.flag.plain", what));
        }
        return value.booleanValue();
    }

    /** Returns the value of an enum that must be there, spelled in camel case. */
    public <E extends Enum<E>> E choice(String name, Class<E> type, String what) throws ProjectFileException {
        String spelled = choice(
                name, Arrays.stream(type.getEnumConstants()).map(EnumNames::of).toList(), what);
        return Arrays.stream(type.getEnumConstants())
                .filter(value -> EnumNames.of(value).equals(spelled))
                .findFirst()
                .orElseThrow();
    }

    /** Returns the value of an enum that may be left out, spelled in camel case. */
    public <E extends Enum<E>> Optional<E> optionalChoice(String name, Class<E> type, String what)
            throws ProjectFileException {
        return optional(name).isPresent() ? Optional.of(choice(name, type, what)) : Optional.empty();
    }

    /** Returns a text that must be one of some. */
    public String choice(String name, List<String> allowed, String what) throws ProjectFileException {
        JsonNode value = present(name, what);
        if (value == null) {
            throw fault(name, TEXTS.text("fields.missing", oneOf(allowed), meaning(what)));
        }
        if (!value.isTextual() || !allowed.contains(value.textValue())) {
            throw fault(name, TEXTS.text("fields.wrong", describe(value), oneOf(allowed), meaning(what)));
        }
        return value.textValue();
    }

    private static String oneOf(List<String> allowed) {
        return TEXTS.text(
                "needs.choice", allowed.stream().map(word -> "\"" + word + "\"").collect(Collectors.joining(", ")));
    }

    /** Returns a day that may be left out. */
    public Optional<LocalDate> optionalDay(String name, String what) throws ProjectFileException {
        return optional(name).isPresent() ? Optional.of(day(name, what)) : Optional.empty();
    }

    /** Returns a day that must be there. */
    public LocalDate day(String name, String what) throws ProjectFileException {
        JsonNode value = required(name, DAY, what);
        try {
            return LocalDate.parse(value.asText());
        } catch (DateTimeParseException wrong) {
            throw source.fault(fieldPath(name), wrong(value, DAY, what), wrong);
        }
    }

    /** Returns a moment that must be there. */
    public Instant instant(String name, String what) throws ProjectFileException {
        JsonNode value = required(name, MOMENT, what);
        try {
            return Instant.parse(value.asText());
        } catch (DateTimeParseException wrong) {
            throw source.fault(fieldPath(name), wrong(value, MOMENT, what), wrong);
        }
    }

    /** Returns a reader of an object that must be there. */
    public FieldReader object(String name, String what) throws ProjectFileException {
        return at(source, required(name, "needs.object", what), fieldPath(name), findings, what);
    }

    /** Returns a reader of an object that may be left out. */
    public Optional<FieldReader> optionalObject(String name, String what) throws ProjectFileException {
        Optional<JsonNode> value = optional(name);
        return value.isPresent()
                ? Optional.of(at(source, value.get(), fieldPath(name), findings, what))
                : Optional.empty();
    }

    /** Returns the entries of a list of objects, none when it is left out. */
    public <T> List<T> list(String name, String what, EntryReader<T> reader) throws ProjectFileException {
        List<T> list = new ArrayList<>();
        for (JsonNode entry : entries(name, what)) {
            String entryPath = JsonPaths.entry(fieldPath(name), list.size());
            list.add(reader.read(at(source, entry, entryPath, findings, what)));
        }
        return list;
    }

    private Iterable<JsonNode> entries(String name, String what) throws ProjectFileException {
        Optional<JsonNode> value = optional(name);
        if (value.isEmpty()) {
            return List.of();
        }
        if (!value.get().isArray()) {
            throw fault(name, wrong(value.get(), "needs.list", what));
        }
        return value.get();
    }

    /** Returns what a constructor makes, turning its refusal into a fault at this object; then reports the unknown fields. */
    public <T> T build(Supplier<T> constructor) throws ProjectFileException {
        try {
            T built = constructor.get();
            finish();
            return built;
        } catch (IllegalArgumentException refused) {
            throw refusal(refused);
        }
    }

    /** Reports the fields that nobody asked for. */
    public void finish() {
        for (String name : names()) {
            if (!asked.contains(name)) {
                findings.unknownField(fieldPath(name), name);
            }
        }
    }

    // A record's refusal begins with the name of the component, perhaps with a word before it: "load id is blank; ...".
    private ProjectFileException refusal(IllegalArgumentException refused) {
        String message = refused.getMessage();
        String said = Refusal.said(message);
        int verb = Math.max(0, message.indexOf(" is "));
        String name = message.substring(message.lastIndexOf(' ', verb - 1) + 1, verb);
        String sentence = wanted.containsKey(name)
                ? TEXTS.text("fields.refused.meaning", said, meaning(wanted.get(name)))
                : TEXTS.text("fields.refused", said);
        String where = object.has(name) ? fieldPath(name) : path;
        return source.fault(where, sentence, refused);
    }

    private JsonNode required(String name, String needed, String what) throws ProjectFileException {
        JsonNode value = present(name, what);
        if (value == null) {
            throw fault(name, TEXTS.text("fields.missing", TEXTS.text(needed), example(needed, what)));
        }
        return value;
    }

    private JsonNode present(String name, String what) {
        wanted.put(name, what);
        asked.add(name);
        return object.get(name);
    }

    private Optional<JsonNode> optional(String name) {
        asked.add(name);
        return Optional.ofNullable(object.get(name)).filter(value -> value.getNodeType() != JsonNodeType.NULL);
    }

    private String fieldPath(String name) {
        return JsonPaths.field(path, name);
    }

    private ProjectFileException fault(String name, String sentence) {
        return source.fault(fieldPath(name), sentence);
    }

    private static String wrong(JsonNode value, String needed, String what) {
        return TEXTS.text("fields.wrong", describe(value), TEXTS.text(needed), example(needed, what));
    }

    /** Returns what a field is, with an example where the form asked for has one. */
    private static String example(String needed, String what) {
        String key = needed + ".example";
        return TEXTS.has(key) ? TEXTS.text(key, meaning(what)) : meaning(what);
    }

    // Looked up only when there is something to say: a log of a hundred thousand readings asks for millions of fields.
    private static String meaning(String what) {
        return TEXTS.text(what);
    }

    /** Returns in a few words what a value is. */
    static String describe(JsonNode value) {
        if (value.isObject()) {
            return TEXTS.text("fields.object");
        }
        if (value.isArray()) {
            return TEXTS.text("fields.list");
        }
        String text = value.toString();
        return text.length() <= LONGEST_SHOWN ? text : text.substring(0, LONGEST_SHOWN) + "...";
    }
}
