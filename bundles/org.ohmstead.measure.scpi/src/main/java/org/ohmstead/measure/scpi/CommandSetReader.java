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
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import org.ohmstead.measure.MeasurementException;

/** Reads the text of a command set, and says of each line that is wrong what would be right. */
final class CommandSetReader {
    private static final int MOST_TOLD = 8;
    private static final int LONGEST_COMMAND = 400;
    private static final String ARROW = "->";
    private static final Pattern NUMBER =
            Pattern.compile("number(?: ([1-9]\\d?) of list)?(?: times (\\S+))?", Pattern.CASE_INSENSITIVE);
    private static final Pattern BLOCK = Pattern.compile("block (\\S+)(?: (high|low) first)?");
    private static final String SHAPES =
            "number, number times 0.001, number 5 of list, ready, list, or block int16 high" + " first";

    private final String source;
    private final List<String> wrong = new ArrayList<>();
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
            throw new MeasurementException("The command set \"" + Answer.shown(source) + "\" cannot be used. "
                    + reader.wrong.stream().limit(MOST_TOLD).collect(Collectors.joining(" ")));
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
            tell("\"" + Answer.shown(line)
                    + "\" stands before the first section, where a line is like \"role = supply\".");
            return;
        }
        String key = line.substring(0, equals).strip();
        String value = line.substring(equals + 1).strip();
        if (keys.putIfAbsent(key, value) != null) {
            tell("\"" + Answer.shown(key) + "\" was said before; say it once.");
        } else if (value.isEmpty()) {
            tell("\"" + Answer.shown(key) + "\" is empty; write something after the =.");
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
                    tell("\"" + Answer.shown(value) + "\" is no role; write one of " + InstrumentRole.words() + ".");
                }
            }
            case "errors" -> {
                if (!value.equals("none") && (!value.endsWith("?") || !printable(value))) {
                    tell("\"" + Answer.shown(value) + "\" is no query; write none, or one such as SYSTem:ERRor?.");
                }
            }
            case "amplitude" -> oneOf(key, value, List.of("rms", "peak", "peak-to-peak"));
            case "range" -> oneOf(key, value, List.of("peak", "peak-to-peak"));
            default -> tell("There is no \"" + Answer.shown(key)
                    + "\"; there are name, role, identity, errors, amplitude and range.");
        }
    }

    private void oneOf(String key, String value, List<String> allowed) {
        if (!allowed.contains(value)) {
            tell("\"" + key + "\" is \"" + Answer.shown(value) + "\"; write one of " + String.join(", ", allowed)
                    + ".");
        }
    }

    private void heading(String line) {
        String name = line.endsWith("]") ? line.substring(1, line.length() - 1).strip() : null;
        section = null;
        if (name == null) {
            headings.putIfAbsent(line, lineNumber);
            tell("\"" + Answer.shown(line) + "\" lacks the ] at its end.");
            return;
        }
        Integer before = headings.putIfAbsent(name, lineNumber);
        if (before != null) {
            tell("[" + Answer.shown(name) + "] is in line " + before + " already; write its commands there.");
        } else if (role != null && !role.actions().containsKey(name)) {
            tell("A " + role.word() + " has no [" + Answer.shown(name) + "]; it has "
                    + role.actions().keySet().stream()
                            .map(each -> "[" + each + "]")
                            .collect(Collectors.joining(", "))
                    + ".");
        } else if (role != null) {
            section = name;
            sections.put(name, new ArrayList<>());
        }
    }

    private void command(String line) {
        int arrow = line.indexOf(ARROW);
        String text = (arrow < 0 ? line : line.substring(0, arrow)).strip();
        if (text.isEmpty() || text.length() > LONGEST_COMMAND || !printable(text)) {
            tell("A command is a line of 1 to " + LONGEST_COMMAND + " printable ASCII characters.");
            return;
        }
        boolean query = text.split("\\s", 2)[0].endsWith("?");
        Optional<AnswerShape> shape = Optional.empty();
        if (questions(text) > (query ? 1 : 0)) {
            tell("\"" + Answer.shown(text) + "\" asks behind something else; give each query a line of its own.");
        } else if (query && arrow < 0) {
            tell("\"" + Answer.shown(text) + "\" asks for something; write -> and what it gives behind it: " + SHAPES
                    + ".");
        } else if (!query && arrow >= 0) {
            tell("\"" + Answer.shown(text)
                    + "\" asks for nothing, since its first word does not end with ?; leave out the -> or add the ?.");
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
            tell("A brace in \"" + Answer.shown(command.text()) + "\" belongs to nothing; here are " + listed + ".");
        }
        for (String name : command.placeholders()) {
            if (!allowed.contains(name)) {
                tell("[" + section + "] has nothing to put in place of {" + Answer.shown(name) + "}; here are " + listed
                        + ".");
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
        tell("\"" + Answer.shown(text) + "\" is no shape of an answer; write " + SHAPES + ".");
        return Optional.empty();
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
            tell("\"" + Answer.shown(number.group(2)) + "\" is no factor; write a number other than 0, such as 0.001.");
            return Optional.empty();
        }
        return Optional.of(new AnswerShape.Number(field, factor));
    }

    private Optional<AnswerShape> block(String word, String order) {
        Optional<BlockFormat> format = BlockFormat.of(word);
        if (format.isEmpty()) {
            tell("\"" + Answer.shown(word) + "\" is no format of a block; write one of " + BlockFormat.words() + ".");
            return Optional.empty();
        }
        if (order == null && !word.endsWith("int8")) {
            tell("\"block " + word + "\" does not say which byte comes first; write block " + word
                    + " high first or block " + word + " low first.");
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
        keyOf(
                InstrumentRole.GENERATOR,
                "amplitude",
                "What amplitudes mean is missing; write amplitude = rms, peak or peak-to-peak");
        keyOf(InstrumentRole.OSCILLOSCOPE, "range", "What ranges mean is missing; write range = peak or peak-to-peak");
        for (InstrumentRole.Action action : role.actions().values()) {
            if (sections.containsKey(action.name())) {
                lineNumber = headings.get(action.name());
                section(action, sections.get(action.name()));
            } else if (action.needed()) {
                lineNumber = last;
                tell("[" + action.name() + "] is missing; a " + role.word() + " needs it.");
            }
        }
        lineNumber = last;
        if (role == InstrumentRole.MULTIMETER && sections.keySet().stream().noneMatch(s -> s.startsWith("measure"))) {
            tell("It measures nothing; write [measure volts], [measure amps] or [measure temperature].");
        }
        if (fetchesCounts() && !sections.containsKey("scale")) {
            tell("[scale] is missing; [fetch] brings whole numbers, so it must give the volts of one count.");
        }
    }

    private void keysOfAll() {
        if (!keys.containsKey("name")) {
            tell("Its name is missing; write a line like \"name = Supply of bench 2\" at the top.");
        }
        if (!keys.containsKey("role")) {
            tell("Its role is missing; write \"role = \" and one of " + InstrumentRole.words() + " at the top.");
        }
    }

    private void keyOf(InstrumentRole whose, String key, String missing) {
        if (role == whose && !keys.containsKey(key)) {
            tell(missing + " at the top.");
        } else if (role != whose && keys.containsKey(key)) {
            tell("\"" + key + "\" means nothing for a " + role.word() + "; leave it out.");
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
                tell("[" + action.name() + "] has no {" + name + "}; write it where the number belongs.");
            }
        }
        if (!answersSuit(action.gives(), lines)) {
            tell("[" + action.name() + "] "
                    + switch (action.gives()) {
                        case NO_ANSWER -> "must not ask for anything; move its queries to [wait].";
                        case NOTHING -> "gives nothing; of queries it may only have -> ready.";
                        case NUMBER -> "needs one query with -> number, and no other but -> ready.";
                        case SAMPLES -> "needs one query with -> list or -> block, and no other but -> ready.";
                    });
        } else if (lines.isEmpty() && action.needed()) {
            tell("[" + action.name() + "] is empty; write its commands below it.");
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

    private void tell(String what) {
        wrong.add("Line " + lineNumber + " of \"" + Answer.shown(source) + "\": " + what);
    }
}
