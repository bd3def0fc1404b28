// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.measure.scpi;

import java.nio.ByteOrder;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.function.Supplier;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import org.ohmstead.measure.MeasurementException;
import org.ohmstead.units.text.Messages;
import org.ohmstead.units.text.Said;

/** Reads the text of a command set, and says of each line that is wrong what would be right. */
final class CommandSetReader {
    private static final Messages TEXTS = Messages.of(CommandSetReader.class);
    private static final int MOST_TOLD = 8;
    private static final int LONGEST_COMMAND = 400;
    private static final String ARROW = "->";
    private static final Pattern NUMBER =
            Pattern.compile("number(?: ([1-9]\\d?) of list)?(?: times (\\S+))?", Pattern.CASE_INSENSITIVE);
    private static final Pattern BLOCK = Pattern.compile("block (\\S+)(?: (high|low) first)?");

    private final String source;
    private final List<Said> wrong = new ArrayList<>();
    private final Map<String, String> keys = new LinkedHashMap<>();
    private final Map<String, List<CommandLine>> sections = new LinkedHashMap<>();
    private final Map<String, Integer> headings = new LinkedHashMap<>();
    private InstrumentRole role;
    private String section;
    private int lineNumber;

    private CommandSetReader(String source) {
        this.source = source;
    }

    /**
     * Reads a command set.
     *
     * @param id its short name
     * @param source where the text is from, such as the file's name
     * @throws MeasurementException when something is wrong with it; it names the first lines that are
     */
    static CommandSet read(String id, String source, String text) throws MeasurementException {
        CommandSetReader reader = new CommandSetReader(source);
        for (String line : text.stripTrailing().split("\\R", -1)) {
            reader.lineNumber++;
            reader.line(line.strip());
        }
        reader.whole();
        if (!reader.wrong.isEmpty()) {
            throw MeasurementException.of(() -> TEXTS.text(
                    "file.unusable",
                    Answer.shown(source),
                    reader.wrong.stream().limit(MOST_TOLD).map(Said::text).collect(Collectors.joining(" "))));
        }
        return new CommandSet(id, reader.role, reader.keys, reader.sections);
    }

    private void line(String line) {
        if (line.isEmpty() || line.startsWith("#")) {
            return;
        }
        if (line.startsWith("[")) {
            heading(line);
        } else if (headings.isEmpty()) {
            key(line);
        } else if (section != null) {
            command(line);
        }
    }

    private void key(String line) {
        int equals = line.indexOf('=');
        if (equals < 0) {
            tell(() -> TEXTS.text("file.beforeSection", Answer.shown(line)));
            return;
        }
        String key = line.substring(0, equals).strip();
        String value = line.substring(equals + 1).strip();
        if (keys.putIfAbsent(key, value) != null) {
            tell(() -> TEXTS.text("file.saidTwice", Answer.shown(key)));
        } else if (value.isEmpty()) {
            tell(() -> TEXTS.text("file.emptyKey", Answer.shown(key)));
        } else {
            known(key, value);
        }
    }

    private void known(String key, String value) {
        switch (key) {
            case "name", "identity" -> {
                // Any words will do.
            }
            case "role" -> {
                role = InstrumentRole.of(value).orElse(null);
                if (role == null) {
                    tell(() -> TEXTS.text("file.noRole", Answer.shown(value), InstrumentRole.words()));
                }
            }
            case "errors" -> {
                if (!value.equals("none") && (!value.endsWith("?") || !printable(value))) {
                    tell(() -> TEXTS.text("file.noQuery", Answer.shown(value)));
                }
            }
            case "amplitude" -> oneOf(key, value, List.of("rms", "peak", "peak-to-peak"));
            case "range" -> oneOf(key, value, List.of("peak", "peak-to-peak"));
            default -> tell(() -> TEXTS.text("file.noKey", Answer.shown(key)));
        }
    }

    private void oneOf(String key, String value, List<String> allowed) {
        if (!allowed.contains(value)) {
            tell(() -> TEXTS.text("file.notOneOf", key, Answer.shown(value), String.join(", ", allowed)));
        }
    }

    private void heading(String line) {
        String name = line.endsWith("]") ? line.substring(1, line.length() - 1).strip() : null;
        section = null;
        if (name == null) {
            headings.putIfAbsent(line, lineNumber);
            tell(() -> TEXTS.text("file.openHeading", Answer.shown(line)));
            return;
        }
        Integer before = headings.putIfAbsent(name, lineNumber);
        if (before != null) {
            tell(() -> TEXTS.text("file.headingTwice", Answer.shown(name), String.valueOf(before)));
        } else if (role != null && !role.actions().containsKey(name)) {
            tell(() -> TEXTS.text(
                    "file.noAction",
                    role.word(),
                    Answer.shown(name),
                    role.actions().keySet().stream()
                            .map(each -> "[" + each + "]")
                            .collect(Collectors.joining(", "))));
        } else if (role != null) {
            section = name;
            sections.put(name, new ArrayList<>());
        }
    }

    private void command(String line) {
        int arrow = line.indexOf(ARROW);
        String text = (arrow < 0 ? line : line.substring(0, arrow)).strip();
        if (text.isEmpty() || text.length() > LONGEST_COMMAND || !printable(text)) {
            tell(() -> TEXTS.text("file.badCommand", String.valueOf(LONGEST_COMMAND)));
            return;
        }
        boolean query = text.split("\\s", 2)[0].endsWith("?");
        Optional<AnswerShape> shape = Optional.empty();
        if (questions(text) > (query ? 1 : 0)) {
            tell(() -> TEXTS.text("file.asksBehind", Answer.shown(text)));
        } else if (query && arrow < 0) {
            tell(() -> TEXTS.text("file.noShape", Answer.shown(text), shapes()));
        } else if (!query && arrow >= 0) {
            tell(() -> TEXTS.text("file.asksNothing", Answer.shown(text)));
        } else if (query) {
            shape = shape(line.substring(arrow + ARROW.length()).strip());
        }
        // What is wrong is counted as well, so that a section is not called empty on top of it.
        CommandLine command = new CommandLine(text, shape);
        placeholders(command);
        sections.get(section).add(command);
    }

    /** Counts the question marks outside of quotes. */
    private static long questions(String text) {
        return text.replaceAll("\"[^\"]*\"|'[^']*'", "")
                .chars()
                .filter(letter -> letter == '?')
                .count();
    }

    private void placeholders(CommandLine command) {
        InstrumentRole.Action action = role.actions().get(section);
        Set<String> allowed =
                new LinkedHashSet<>(action.mustFill().stream().sorted().toList());
        allowed.addAll(action.mayFill().stream().sorted().toList());
        allowed.add("channel");
        String listed = allowed.stream().map(each -> "{" + each + "}").collect(Collectors.joining(", "));
        if (command.hasLooseBraces()) {
            tell(() -> TEXTS.text("file.looseBrace", Answer.shown(command.text()), listed));
        }
        for (String name : command.placeholders()) {
            if (!allowed.contains(name)) {
                tell(() -> TEXTS.text("file.noPlaceholder", section, Answer.shown(name), listed));
            }
        }
    }

    private Optional<AnswerShape> shape(String text) {
        Matcher number = NUMBER.matcher(text);
        Matcher block = BLOCK.matcher(text);
        if (text.equals("ready")) {
            return Optional.of(new AnswerShape.Ready());
        }
        if (text.equals("list")) {
            return Optional.of(new AnswerShape.Numbers());
        }
        if (number.matches()) {
            return number(number);
        }
        if (block.matches()) {
            return block(block.group(1), block.group(2));
        }
        tell(() -> TEXTS.text("file.wrongShape", Answer.shown(text), shapes()));
        return Optional.empty();
    }

    private static String shapes() {
        return TEXTS.text("file.shapes");
    }

    private Optional<AnswerShape> number(Matcher number) {
        int field = number.group(1) == null ? 0 : Integer.parseInt(number.group(1));
        double factor = 1;
        if (number.group(2) != null) {
            try {
                factor = Answer.number(number.group(2));
            } catch (AnswerFault unreadable) {
                factor = 0;
            }
        }
        if (factor == 0 || !Double.isFinite(factor)) {
            tell(() -> TEXTS.text("file.noFactor", Answer.shown(number.group(2))));
            return Optional.empty();
        }
        return Optional.of(new AnswerShape.Number(field, factor));
    }

    private Optional<AnswerShape> block(String word, String order) {
        Optional<BlockFormat> format = BlockFormat.of(word);
        if (format.isEmpty()) {
            tell(() -> TEXTS.text("file.noFormat", Answer.shown(word), BlockFormat.words()));
            return Optional.empty();
        }
        if (order == null && !word.endsWith("int8")) {
            tell(() -> TEXTS.text("file.noOrder", word));
            return Optional.empty();
        }
        return Optional.of(new AnswerShape.Block(
                format.get(), "low".equals(order) ? ByteOrder.LITTLE_ENDIAN : ByteOrder.BIG_ENDIAN));
    }

    private void whole() {
        int last = lineNumber;
        lineNumber = 1;
        keysOfAll();
        if (role == null) {
            return;
        }
        keyOf(InstrumentRole.GENERATOR, "amplitude", "file.amplitudeMissing");
        keyOf(InstrumentRole.OSCILLOSCOPE, "range", "file.rangeMissing");
        for (InstrumentRole.Action action : role.actions().values()) {
            if (sections.containsKey(action.name())) {
                lineNumber = headings.get(action.name());
                section(action, sections.get(action.name()));
            } else if (action.needed()) {
                lineNumber = last;
                tell(() -> TEXTS.text("file.actionMissing", action.name(), role.word()));
            }
        }
        lineNumber = last;
        if (role == InstrumentRole.MULTIMETER && sections.keySet().stream().noneMatch(s -> s.startsWith("measure"))) {
            tell(() -> TEXTS.text("file.measuresNothing"));
        }
        if (fetchesCounts() && !sections.containsKey("scale")) {
            tell(() -> TEXTS.text("file.scaleMissing"));
        }
    }

    private void keysOfAll() {
        if (!keys.containsKey("name")) {
            tell(() -> TEXTS.text("file.nameMissing"));
        }
        if (!keys.containsKey("role")) {
            tell(() -> TEXTS.text("file.roleMissing", InstrumentRole.words()));
        }
    }

    private void keyOf(InstrumentRole whose, String key, String missing) {
        if (role == whose && !keys.containsKey(key)) {
            tell(() -> TEXTS.text(missing));
        } else if (role != whose && keys.containsKey(key)) {
            tell(() -> TEXTS.text("file.keyUnused", key, role.word()));
        }
    }

    private boolean fetchesCounts() {
        return sections.getOrDefault("fetch", List.of()).stream()
                .anyMatch(line -> line.answer().orElse(null) instanceof AnswerShape.Block block
                        && block.format().counts());
    }

    private void section(InstrumentRole.Action action, List<CommandLine> lines) {
        Set<String> filled = new LinkedHashSet<>();
        lines.forEach(line -> filled.addAll(line.placeholders()));
        for (String name : action.mustFill().stream().sorted().toList()) {
            if (!filled.contains(name)) {
                tell(() -> TEXTS.text("file.notFilled", action.name(), name));
            }
        }
        if (!answersSuit(action.gives(), lines)) {
            tell(() -> TEXTS.text("file.gives." + action.gives().name(), action.name()));
        } else if (lines.isEmpty() && action.needed()) {
            tell(() -> TEXTS.text("file.emptySection", action.name()));
        }
    }

    private static boolean answersSuit(InstrumentRole.Action.Gives gives, List<CommandLine> lines) {
        long numbers = count(lines, AnswerShape.Number.class);
        long samples = count(lines, AnswerShape.Numbers.class) + count(lines, AnswerShape.Block.class);
        return switch (gives) {
            case NO_ANSWER -> lines.stream().allMatch(line -> line.answer().isEmpty());
            case NOTHING -> numbers + samples == 0;
            case NUMBER -> numbers == 1 && samples == 0;
            case SAMPLES -> numbers == 0 && samples == 1;
        };
    }

    private static long count(List<CommandLine> lines, Class<? extends AnswerShape> shape) {
        return lines.stream()
                .filter(line -> shape.isInstance(line.answer().orElse(null)))
                .count();
    }

    private static boolean printable(String text) {
        return text.chars().allMatch(letter -> letter >= ' ' && letter < 0x7f);
    }

    private void tell(Supplier<String> what) {
        wrong.add(Said.of(() -> TEXTS.text("file.line", String.valueOf(lineNumber), Answer.shown(source), what.get())));
    }
}
