// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.jobs;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.function.UnaryOperator;
import org.ohmstead.units.text.Messages;

/**
 * The folder with the project and the recordings of the demo.
 *
 * @param folder where they lie
 */
public record DemoData(Path folder) {
    private static final Messages TEXTS = Messages.of(DemoData.class);

    /** Environment variable that names the folder. */
    public static final String VARIABLE = "OHMSTEAD_DEMO_DATA";

    /** System property that names the folder. */
    public static final String PROPERTY = "ohmstead.demo.data";

    private static final String FOLDER_NAME = "demo-data";

    /** Checks that it is given. */
    public DemoData {
        Objects.requireNonNull(folder, "folder");
    }

    /**
     * Returns where the demo data may lie, the likeliest first: what {@link #VARIABLE} names, what {@link #PROPERTY} names, the folder
     * {@code demo-data} of the installation, that of the working folder.
     *
     * @param installation where Ohmstead is installed, if that is known
     */
    public static List<Path> places(Optional<Path> installation) {
        return places(installation, System::getenv, System::getProperty);
    }

    static List<Path> places(
            Optional<Path> installation, UnaryOperator<String> environment, UnaryOperator<String> properties) {
        List<Path> places = new ArrayList<>();
        named(environment.apply(VARIABLE)).ifPresent(places::add);
        named(properties.apply(PROPERTY)).ifPresent(places::add);
        installation.map(folder -> folder.resolve(FOLDER_NAME)).ifPresent(places::add);
        places.add(Path.of(FOLDER_NAME));
        return places;
    }

    private static Optional<Path> named(String value) {
        return Optional.ofNullable(value).filter(text -> !text.isBlank()).map(Path::of);
    }

    /**
     * Returns the demo data in the first of some places that has them.
     *
     * @param places where to look, see {@link #places}
     * @throws JobException when none has them; the message names the places
     */
    public static DemoData find(List<Path> places) throws JobException {
        return places.stream()
                .map(DemoData::new)
                .filter(data -> Files.isDirectory(data.projectFolder()))
                .findFirst()
                .orElseThrow(() -> new JobException(TEXTS.text("demo.noData", places, VARIABLE)));
    }

    /** Returns where the demo's project lies, as it is before anything was measured. */
    public Path projectFolder() {
        return folder.resolve(DemoProject.NAME);
    }

    /** Returns where the demo's recordings lie. */
    public Path recordingsFolder() {
        return folder.resolve("recordings");
    }
}
