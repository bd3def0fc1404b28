// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.measure.engine;

import java.io.File;
import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.net.URISyntaxException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.TimeUnit;
import java.util.stream.Stream;
import java.util.zip.ZipEntry;
import java.util.zip.ZipOutputStream;
import org.ohmstead.measure.Measurement;
import org.ohmstead.model.Project;
import org.ohmstead.model.json.ReadingJson;
import org.ohmstead.signal.Waveform;
import org.ohmstead.testlog.TestLog;
import org.ohmstead.units.Unit;
import org.sqlite.SQLiteDataSource;
import org.sqlite.util.LibraryLoaderUtil;

/** {@link PlanChild} as a program that starts quickly: its classes in an archive that the machine maps, its library unpacked once. */
final class ChildProgram {
    private final Path folder;
    private final List<String> command = new ArrayList<>();

    /** Makes the program in a folder of its own. */
    ChildProgram(Path folder) throws IOException, ClassNotFoundException, InterruptedException {
        this.folder = Files.createDirectories(folder);
        command.add(Path.of(System.getProperty("java.home"), "bin", "java").toString());
        command.addAll(List.of("-XX:TieredStopAtLevel=1", "-XX:+UseSerialGC", "-Xshare:auto", "-Xlog:disable"));
        command.add("-Djava.io.tmpdir=" + Files.createDirectories(folder.resolve("tmp")));
        library();
        command.addAll(List.of("-cp", classPath()));
        archive();
    }

    private void library() throws IOException {
        String name = LibraryLoaderUtil.getNativeLibName();
        String resource = LibraryLoaderUtil.getNativeLibResourcePath() + "/" + name;
        try (InputStream library = SQLiteDataSource.class.getResourceAsStream(resource)) {
            Files.copy(library, folder.resolve(name));
        }
        command.add("-Dorg.sqlite.lib.path=" + folder);
        command.add("-Dorg.sqlite.lib.name=" + name);
    }

    /** What readings' JSON needs at run time is named too, though this bundle itself never sees it. */
    private String classPath() throws IOException, ClassNotFoundException {
        List<Class<?>> types = List.of(
                PlanChild.class,
                PlanRun.class,
                Measurement.class,
                Project.class,
                ReadingJson.class,
                Waveform.class,
                TestLog.class,
                Unit.class,
                SQLiteDataSource.class,
                Class.forName("com.fasterxml.jackson.databind.JsonNode"),
                Class.forName("com.fasterxml.jackson.core.JsonParser"),
                Class.forName("com.fasterxml.jackson.annotation.JsonProperty"));
        List<Path> places = types.stream().map(ChildProgram::placeOf).distinct().toList();
        List<String> entries = new ArrayList<>();
        for (Path place : places) {
            entries.add((Files.isDirectory(place) ? packed(place, entries.size()) : place).toString());
        }
        return String.join(File.pathSeparator, entries);
    }

    private static Path placeOf(Class<?> type) {
        try {
            return Path.of(
                    type.getProtectionDomain().getCodeSource().getLocation().toURI());
        } catch (URISyntaxException broken) {
            throw new IllegalStateException(broken);
        }
    }

    /** Only classes in jars can be archived. */
    private Path packed(Path classes, int number) throws IOException {
        Path jar = folder.resolve(number + ".jar");
        try (Stream<Path> files = Files.walk(classes);
                OutputStream file = Files.newOutputStream(jar);
                ZipOutputStream zip = new ZipOutputStream(file)) {
            zip.setLevel(0);
            for (Path each : files.filter(Files::isRegularFile).toList()) {
                zip.putNextEntry(
                        new ZipEntry(classes.relativize(each).toString().replace(File.separatorChar, '/')));
                Files.copy(each, zip);
                zip.closeEntry();
            }
        }
        return jar;
    }

    /** Lets a first run archive what it loads; where the machine cannot, the others only start more slowly. */
    private void archive() throws IOException, InterruptedException {
        Path archive = folder.resolve("classes.jsa");
        Path project = Files.createDirectories(folder.resolve("first"));
        Process first = process(List.of("-XX:ArchiveClassesAtExit=" + archive), project, 2)
                .redirectOutput(ProcessBuilder.Redirect.DISCARD)
                .start();
        if (!first.waitFor(60, TimeUnit.SECONDS) || first.exitValue() != 0) {
            throw new IllegalStateException("the program does not run");
        }
        if (Files.exists(archive)) {
            command.add(1, "-XX:SharedArchiveFile=" + archive);
        }
    }

    private ProcessBuilder process(List<String> options, Path project, int steps) {
        List<String> all = new ArrayList<>(command);
        all.addAll(1, options);
        all.addAll(List.of(PlanChild.class.getName(), project.toString(), Integer.toString(steps)));
        return new ProcessBuilder(all).redirectError(ProcessBuilder.Redirect.DISCARD);
    }

    /** Starts it on a plan of so many steps. */
    Process start(Path project, int steps) throws IOException {
        return process(List.of(), project, steps).start();
    }
}
