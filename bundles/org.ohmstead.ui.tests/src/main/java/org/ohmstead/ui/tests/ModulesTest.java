// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.ui.tests;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.function.Predicate;
import java.util.jar.Attributes;
import java.util.jar.JarOutputStream;
import java.util.jar.Manifest;
import org.eclipse.core.runtime.Platform;
import org.eclipse.swt.widgets.Table;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.osgi.framework.Bundle;
import org.osgi.framework.Constants;

/** Modules that lie as jars in a folder: one that runs, and one that cannot, which is shown whether a project is open or not. */
class ModulesTest {
    private static final String SOUND = "org.ohmstead.ui.tests.sound";
    private static final String FAULTY = "org.ohmstead.ui.tests.faulty";

    private final Bench bench = Bench.running();

    private final List<String> asked = new ArrayList<>();

    @TempDir
    Path folder;

    @AfterEach
    void takeOut() throws Exception {
        start(List.of(), false);
        bench.close();
    }

    /** Starts the modules of folders as the start of the application does, and says the same to each question. */
    private void start(List<Path> folders, boolean answer) throws ReflectiveOperationException {
        Bundle app = Platform.getBundle("org.ohmstead.app");
        Class<?> trusted = app.loadClass("org.ohmstead.jobs.TrustedModules");
        Predicate<Object> question = module -> {
            asked.add(module.toString());
            return answer;
        };
        app.loadClass("org.ohmstead.app.internal.module.ModuleFolders")
                .getMethod("start", List.class, trusted, Predicate.class)
                .invoke(
                        null,
                        folders,
                        trusted.getConstructor(Path.class).newInstance(folder.resolve("state")),
                        question);
    }

    private static void module(Path jar, String name, String imported) throws IOException {
        Manifest manifest = new Manifest();
        Attributes headers = manifest.getMainAttributes();
        headers.put(Attributes.Name.MANIFEST_VERSION, "1.0");
        headers.putValue(Constants.BUNDLE_MANIFESTVERSION, "2");
        headers.putValue(Constants.BUNDLE_SYMBOLICNAME, name);
        headers.putValue(Constants.BUNDLE_VERSION, "1.0.0");
        headers.putValue(Constants.IMPORT_PACKAGE, imported);
        new JarOutputStream(Files.newOutputStream(jar), manifest).close();
    }

    private boolean namesFaulty() {
        return bench.desk().problems().stream()
                .anyMatch(problem -> problem.what().contains(FAULTY));
    }

    @Test
    void aFaultyModuleIsAProblemWithAProjectAndWithout() throws Exception {
        Path modules = Files.createDirectory(folder.resolve("modules"));
        module(modules.resolve("faulty.jar"), FAULTY, "org.ohmstead.nowhere");
        module(modules.resolve("sound.jar"), SOUND, "org.osgi.framework");
        start(List.of(modules), true);
        assertEquals(Bundle.ACTIVE, Platform.getBundle(SOUND).getState());
        bench.openCopy(folder);
        bench.pump().until(this::namesFaulty, "The faulty module is no problem of the open project.");
        bench.close();
        bench.pump().until(this::namesFaulty, "Without a project the faulty module is no problem.");
        assertEquals(1, bench.desk().problems().size(), bench.desk().problems().toString());
        bench.view("org.ohmstead.workbench.problems");
        Table problems = bench.find("problems.table", Table.class);
        assertEquals(1, problems.getItemCount());
        assertTrue(problems.isVisible(), "the list is hidden");
        String what = problems.getItem(0).getText(1);
        assertTrue(what.contains(FAULTY) && what.contains("org.ohmstead.nowhere"), what);
    }

    @Test
    void aModuleRunsOnlyAfterAYesAndAChangedOneIsAskedAboutAnew() throws Exception {
        Path modules = Files.createDirectory(folder.resolve("modules"));
        Path jar = modules.resolve("sound.jar");
        module(jar, SOUND, "org.osgi.framework");
        start(List.of(modules), false);
        assertNull(Platform.getBundle(SOUND), "it runs although the answer was no");
        start(List.of(modules), true);
        assertEquals(Bundle.ACTIVE, Platform.getBundle(SOUND).getState());
        assertEquals(2, asked.size(), asked.toString());
        start(List.of(modules), false);
        assertEquals(2, asked.size(), "what was said yes to is asked about again");
        assertEquals(Bundle.ACTIVE, Platform.getBundle(SOUND).getState());
        module(jar, SOUND, "org.osgi.framework,org.osgi.service.event;resolution:=optional");
        start(List.of(modules), false);
        assertEquals(3, asked.size(), "the changed jar is taken for the old one");
        assertNull(Platform.getBundle(SOUND), "the changed jar, or the old one in its place, runs without a yes");
    }
}
