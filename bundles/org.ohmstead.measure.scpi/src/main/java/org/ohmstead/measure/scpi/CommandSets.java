// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.measure.scpi;

import java.io.IOException;
import java.io.InputStream;
import java.nio.ByteBuffer;
import java.nio.charset.CharacterCodingException;
import java.nio.charset.StandardCharsets;
import java.nio.file.DirectoryStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.stream.Collectors;
import org.ohmstead.measure.MeasurementException;
import org.ohmstead.units.text.Messages;

/**
 * The command sets that there are: those that come with Ohmstead, made of names of SCPI 1999 alone, and those of a folder. A file of the
 * folder whose name is that of a set of ours takes its place. Each is read when it is asked for.
 */
public final class CommandSets {
    private static final Messages TEXTS = Messages.of(CommandSets.class);
    /** What the names of files of command sets end with. */
    public static final String ENDING = ".commands";

    private static final List<String> SHIPPED = List.of(
            "supply",
            "supply-current-limit",
            "supply-channels",
            "multimeter",
            "multimeter-channels",
            "multimeter-read",
            "generator",
            "generator-list-burst",
            "generator-pulse-burst",
            "oscilloscope-float",
            "oscilloscope-int16",
            "oscilloscope-text");
    private static final int LARGEST_FILE = 1 << 18;
    private static final int MOST_FILES = 500;

    private final Map<String, Path> files;

    private CommandSets(Map<String, Path> files) {
        this.files = files;
    }

    /** Returns the sets that come with Ohmstead alone. */
    public static CommandSets shipped() {
        return new CommandSets(Map.of());
    }

    /**
     * Returns the sets that come with Ohmstead and those of a folder.
     *
     * @throws MeasurementException when the folder cannot be read
     */
    public static CommandSets of(Path folder) throws MeasurementException {
        Map<String, Path> files = new TreeMap<>();
        try (DirectoryStream<Path> stream = Files.newDirectoryStream(folder, "*" + ENDING)) {
            for (Path file : stream) {
                String name = file.getFileName().toString();
                files.put(name.substring(0, name.length() - ENDING.length()), file);
                if (files.size() > MOST_FILES) {
                    throw MeasurementException.of(() -> TEXTS.text("sets.tooMany", folder, String.valueOf(MOST_FILES)));
                }
            }
        } catch (IOException failed) {
            throw MeasurementException.of(() -> TEXTS.text("sets.unreadable", folder), failed);
        }
        return new CommandSets(files);
    }

    /** Returns the short names of all of them, in order. */
    public List<String> ids() {
        Set<String> all = new TreeSet<>(SHIPPED);
        all.addAll(files.keySet());
        return List.copyOf(all);
    }

    /**
     * Reads a command set.
     *
     * @param id its short name
     * @param role what it must be for
     * @throws MeasurementException when there is none of that name, it is for another role, or something is wrong with it; the message
     *     names the lines and what would be right there
     */
    public CommandSet get(String id, InstrumentRole role) throws MeasurementException {
        if (!files.containsKey(id) && !SHIPPED.contains(id)) {
            throw MeasurementException.of(() -> TEXTS.text(
                    "sets.unknown",
                    Answer.shown(id),
                    ids().stream().map(Answer::shown).limit(40).collect(Collectors.joining(", ")),
                    ENDING));
        }
        CommandSet set = CommandSetReader.read(id, id + ENDING, text(id));
        if (set.role() != role) {
            throw MeasurementException.of(
                    () -> TEXTS.text("sets.otherRole", id, set.role().word(), role.word()));
        }
        return set;
    }

    private String text(String id) throws MeasurementException {
        Path file = files.get(id);
        try (InputStream stream =
                file == null ? CommandSets.class.getResourceAsStream(id + ENDING) : Files.newInputStream(file)) {
            if (stream == null) {
                throw MeasurementException.of(() -> TEXTS.text("sets.missing", id, ENDING));
            }
            byte[] bytes = stream.readNBytes(LARGEST_FILE + 1);
            if (bytes.length > LARGEST_FILE) {
                throw MeasurementException.of(() -> TEXTS.text("sets.tooLarge", file, String.valueOf(LARGEST_FILE)));
            }
            String text = StandardCharsets.UTF_8
                    .newDecoder()
                    .decode(ByteBuffer.wrap(bytes))
                    .toString();
            return text.startsWith("\uFEFF") ? text.substring(1) : text;
        } catch (CharacterCodingException wrong) {
            throw MeasurementException.of(() -> TEXTS.text("sets.notUtf8", file), wrong);
        } catch (IOException failed) {
            throw MeasurementException.of(() -> TEXTS.text("sets.failed", id, failed.getLocalizedMessage()), failed);
        }
    }
}
