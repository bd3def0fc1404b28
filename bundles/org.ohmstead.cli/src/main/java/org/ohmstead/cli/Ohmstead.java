// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.cli;

import com.fasterxml.jackson.core.JsonProcessingException;
import java.io.IOException;
import java.io.OutputStreamWriter;
import java.io.PrintStream;
import java.io.PrintWriter;
import java.nio.charset.StandardCharsets;
import java.nio.file.FileSystemException;
import java.nio.file.InvalidPathException;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.function.Function;
import java.util.function.Supplier;
import org.ohmstead.exchange.ExchangeException;
import org.ohmstead.jobs.JobException;
import org.ohmstead.load.NotationException;
import org.ohmstead.measure.standard.EvaluationException;
import org.ohmstead.model.json.ProjectFileException;
import org.ohmstead.report.ReportException;
import org.ohmstead.signal.CaptureException;
import org.ohmstead.signal.sound.SoundException;
import org.ohmstead.signal.stimulus.SoundCards;
import org.ohmstead.testlog.TestLogException;
import org.ohmstead.testlog.shared.SharedLabException;
import org.osgi.framework.Bundle;
import org.osgi.framework.FrameworkUtil;
import picocli.CommandLine;
import picocli.CommandLine.TypeConversionException;

/** The command line: parses the words, runs them, and turns what went wrong into sentences and exit codes. */
public final class Ohmstead {
    private static final int HELP_WIDTH = 110;
    private static final String[] VERSION = {"--version"};

    private Ohmstead() {}

    /**
     * Runs one command line.
     *
     * @param arguments the words and options
     * @param out where results go: text, or one JSON document with {@code --json}
     * @param err where messages and progress go
     * @return 0 done, 1 done but something fell short, 2 wrong usage, 3 bad input, 4 outside failure
     */
    public static int run(String[] arguments, PrintStream out, PrintStream err) {
        Console console = new Console(out, err);
        try (FrameworkPlugins plugins = new FrameworkPlugins(console)) {
            return run(commands(console, plugins, arguments), arguments, out, err, console);
        }
    }

    /** Runs one command line with an input and plug-ins from anywhere. */
    static int run(String[] arguments, PrintStream out, PrintStream err, ConsoleInput in, PluginSource plugins) {
        Console console = new Console(out, err, in);
        return run(commands(console, plugins, arguments), arguments, out, err, console);
    }

    /**
     * Returns the words that some arguments can mean: where the first is a word, that one, as what belongs to it is all that is asked for;
     * none where just the version is asked for; otherwise all. Looking through every class of all words takes half a second.
     */
    static CommandLine commands(Console console, PluginSource plugins, String[] arguments) {
        CommandLine commands = new CommandLine(new RootCommand(console));
        Map<String, Supplier<Object>> all = words(console, plugins);
        String first = arguments.length == 0 ? "" : arguments[0];
        if (all.containsKey(first)) {
            commands.addSubcommand(all.get(first).get());
        } else if (!Arrays.equals(arguments, VERSION)) {
            all.values().forEach(word -> commands.addSubcommand(word.get()));
        }
        commands.registerConverter(Path.class, Ohmstead::path);
        commands.setExpandAtFiles(false);
        commands.setCaseInsensitiveEnumValuesAllowed(true);
        commands.setUsageHelpWidth(HELP_WIDTH);
        commands.setHelpFactory(Words::help);
        commands.setParameterExceptionHandler((fault, given) -> UsageFaults.explain(fault));
        return commands;
    }

    private static Map<String, Supplier<Object>> words(Console console, PluginSource plugins) {
        Map<String, Supplier<Object>> words = new LinkedHashMap<>();
        words.put("demo", () -> new DemoCommand(console));
        words.put("check", () -> new CheckCommand(console));
        words.put("analyze", () -> new AnalyzeCommand(console));
        words.put("run", () -> new RunCommand(console, plugins));
        words.put("curves", () -> new CurvesCommand(console));
        words.put("compare", () -> new CompareCommand(console));
        words.put("report", () -> new ReportCommand(console));
        words.put("load", () -> withWords(new LoadCommand(console), LoadCommand::words));
        words.put("thermal", () -> withWords(new ThermalCommand(console), ThermalCommand::words));
        words.put("setup", () -> withWords(new SetupCommand(console), SetupCommand::words));
        words.put("lesson", () -> withWords(new LessonCommand(console), LessonCommand::words));
        words.put("signal", () -> withWords(new SignalCommand(console, new SoundCards()), SignalCommand::words));
        words.put("sound", () -> withWords(new SoundCommand(console), SoundCommand::words));
        words.put("plugins", () -> withWords(new PluginsCommand(console, plugins), PluginsCommand::words));
        words.put("project", () -> withWords(new ProjectCommand(console), ProjectCommand::words));
        words.put("log", () -> withWords(new LogCommand(console), LogCommand::words));
        words.put("lab", () -> withWords(new LabCommand(console), LabCommand::words));
        return words;
    }

    private static int run(
            CommandLine commands, String[] arguments, PrintStream out, PrintStream err, Console console) {
        commands.setOut(new PrintWriter(new OutputStreamWriter(out, StandardCharsets.UTF_8), true));
        commands.setErr(new PrintWriter(new OutputStreamWriter(err, StandardCharsets.UTF_8), true));
        commands.setExecutionExceptionHandler((failure, command, parsed) -> explain(failure, console));
        int exitCode = commands.execute(arguments);
        if (out.checkError()) {
            console.message(Texts.of("main.output"));
            return ExitCodes.OUTSIDE_FAILURE;
        }
        return exitCode;
    }

    private static <T> CommandLine withWords(T command, Function<T, Object[]> words) {
        CommandLine commandLine = new CommandLine(command);
        for (Object word : words.apply(command)) {
            commandLine.addSubcommand(word);
        }
        return commandLine;
    }

    private static Path path(String name) {
        if (name.isEmpty()) {
            throw new TypeConversionException(Texts.of("main.emptyName"));
        }
        try {
            return Path.of(name);
        } catch (InvalidPathException impossible) {
            throw new TypeConversionException(Texts.of("main.badName", name));
        }
    }

    private static int explain(Exception failure, Console console) {
        if (failure instanceof JobException refusal) {
            console.message(Hints.message(refusal));
            return ExitCodes.BAD_INPUT;
        }
        if (explainsItself(failure)) {
            console.message(failure.getMessage());
            return outside(failure) ? ExitCodes.OUTSIDE_FAILURE : ExitCodes.BAD_INPUT;
        }
        if (failure instanceof NotationException notation) {
            console.message(notation.getMessage());
            notation.pointer().lines().forEach(console::note);
            return ExitCodes.BAD_INPUT;
        }
        if (failure instanceof ReportException || failure instanceof OutsideException) {
            console.message(failure.getMessage());
            return ExitCodes.OUTSIDE_FAILURE;
        }
        if (failure instanceof IOException) {
            console.message(sentence((IOException) failure));
            return ExitCodes.OUTSIDE_FAILURE;
        }
        System.getLogger(Ohmstead.class.getName()).log(System.Logger.Level.DEBUG, "unexpected", failure);
        console.message(Texts.of("main.fault", failure));
        return ExitCodes.OUTSIDE_FAILURE;
    }

    private static boolean explainsItself(Exception failure) {
        return failure instanceof CaptureException
                || failure instanceof ProjectFileException
                || failure instanceof EvaluationException
                || failure instanceof ExchangeException
                || failure instanceof SoundException
                || failure instanceof TestLogException
                || failure instanceof SharedLabException;
    }

    /** Returns whether the disk, the system or another program is to blame, and not what was handed in. */
    private static boolean outside(Exception failure) {
        if (failure instanceof TestLogException log) {
            return log.causedOutside();
        }
        if (failure instanceof ExchangeException exchange) {
            return exchange.causedOutside();
        }
        if (failure instanceof SharedLabException lab) {
            return LabAccess.exitCode(lab) == ExitCodes.OUTSIDE_FAILURE;
        }
        return failure instanceof ProjectFileException
                && failure.getCause() instanceof IOException cause
                && !(cause instanceof JsonProcessingException)
                && !(cause instanceof NoSuchFileException);
    }

    private static String sentence(IOException failure) {
        if (failure instanceof FileSystemException trouble) {
            String reason = Optional.ofNullable(trouble.getReason()).orElse(reason(trouble));
            return Texts.of("main.file", trouble.getFile(), reason);
        }
        return Texts.of("main.anyFile", failure.getMessage());
    }

    private static String reason(FileSystemException trouble) {
        String name = trouble.getClass().getSimpleName();
        String key = "fileReason." + name.replace("Exception", "");
        return Texts.has(key)
                ? Texts.of(key)
                : name.replaceAll("(?<!^)([A-Z])", " $1")
                        .replace(" Exception", "")
                        .toLowerCase(Locale.ROOT);
    }

    /** Returns the version of the software, as kept with every reading. */
    static String version() {
        return Optional.ofNullable(FrameworkUtil.getBundle(Ohmstead.class))
                .map(Bundle::getVersion)
                .map(version -> version.getMajor() + "." + version.getMinor() + "." + version.getMicro())
                .orElse("unbuilt");
    }
}
