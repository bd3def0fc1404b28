// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.ui.tests;

import static org.junit.jupiter.api.Assertions.assertNotNull;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.stream.Stream;
import org.eclipse.core.runtime.IConfigurationElement;
import org.eclipse.core.runtime.IExtension;
import org.eclipse.core.runtime.Platform;
import org.eclipse.help.HelpSystem;
import org.eclipse.jface.preference.PreferenceManager;
import org.eclipse.ui.PlatformUI;
import org.eclipse.ui.commands.ICommandService;
import org.eclipse.ui.keys.IBindingService;
import org.eclipse.ui.views.IViewDescriptor;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.ohmstead.model.Cable;
import org.ohmstead.model.Severity;
import org.ohmstead.workbench.session.ProjectDesk;
import org.osgi.framework.Bundle;

/** What the bundles declare is there: classes, icons, help, preference pages, keys, and the sample module's contributions. */
class DeclarationsTest {
    private static final List<String> VIEWS = List.of(
            "org.ohmstead.workbench.navigator",
            "org.ohmstead.workbench.problems",
            "org.ohmstead.load.ui.design",
            "org.ohmstead.load.ui.bank",
            "org.ohmstead.thermal.ui.forecast",
            "org.ohmstead.thermal.ui.calculator",
            "org.ohmstead.thermal.ui.identify",
            "org.ohmstead.measure.ui.console",
            "org.ohmstead.testlog.ui.log",
            "org.ohmstead.testlog.ui.pair",
            "org.ohmstead.testlog.ui.audit",
            "org.ohmstead.curves.ui.power",
            "org.ohmstead.signal.ui.capture",
            "org.ohmstead.signal.ui.gain",
            "org.ohmstead.signal.ui.stimulus",
            "org.ohmstead.sound.ui.vehicle",
            "org.ohmstead.lessons.ui.lessons",
            "org.ohmstead.report.ui.sheet",
            "org.ohmstead.history.ui.quality",
            "org.ohmstead.history.ui.compare",
            "org.ohmstead.app.help",
            "org.ohmstead.workbench.sample.cable");

    private final Bench bench = Bench.running();

    static Stream<String> ours() {
        return Stream.of(Platform.getExtensionRegistry().getNamespaces())
                .filter(name -> name.startsWith("org.ohmstead."))
                .sorted();
    }

    @ParameterizedTest
    @MethodSource("ours")
    void everyClassAndIconIsThere(String namespace) throws ClassNotFoundException {
        Bundle bundle = Platform.getBundle(namespace);
        for (IExtension extension : Platform.getExtensionRegistry().getExtensions(namespace)) {
            for (IConfigurationElement element : extension.getConfigurationElements()) {
                check(bundle, element);
            }
        }
    }

    private static void check(Bundle bundle, IConfigurationElement element) throws ClassNotFoundException {
        for (String attribute : new String[] {"class", "defaultHandler", "factoryClass"}) {
            String name = element.getAttribute(attribute);
            if (name != null && name.startsWith("org.ohmstead.")) {
                assertNotNull(bundle.loadClass(name.replaceAll(":.*", "")), name);
            }
        }
        String icon = element.getAttribute("icon");
        if (icon != null && !icon.startsWith("platform:")) {
            assertNotNull(bundle.getEntry(icon), bundle.getSymbolicName() + " has no " + icon);
        }
        for (IConfigurationElement child : element.getChildren()) {
            check(bundle, child);
        }
    }

    @Test
    void everyViewOpensWithoutAProjectAndSaysSomething() throws Exception {
        for (String id : VIEWS) {
            IViewDescriptor view = PlatformUI.getWorkbench().getViewRegistry().find(id);
            assertNotNull(view, id);
            bench.view(id);
            assertNotNull(bench.page().findView(id), id);
        }
        for (String id : new String[] {"org.eclipse.ui.views.ProgressView", "org.eclipse.pde.runtime.LogView"}) {
            bench.view(id);
        }
        bench.page().resetPerspective();
        bench.pump().settle();
    }

    @Test
    void everyViewAndPageHasHelp() {
        for (String context : new String[] {
            "navigator",
            "problems",
            "log_view",
            "pair_view",
            "audit_view",
            "power_view",
            "capture_view",
            "gain_view",
            "stimulus_view",
            "sound_view",
            "lesson_view",
            "sheet_view",
            "quality_view",
            "compare_view",
            "amplifier_editor",
            "bench_editor",
            "parts_editor",
            "loads_editor",
            "load_design_view",
            "load_bank_view",
            "plan_editor",
            "console_view",
            "welcome",
            "preferences"
        }) {
            assertNotNull(HelpSystem.getContext("org.ohmstead.app." + context), context);
        }
    }

    @Test
    void preferencesKeysAndTheInstallerAreThere() {
        PreferenceManager pages = PlatformUI.getWorkbench().getPreferenceManager();
        List<String> ids = pages.getElements(PreferenceManager.PRE_ORDER).stream()
                .map(node -> node.getId())
                .toList();
        for (String page : new String[] {
            "org.ohmstead.app.appearance",
            "org.ohmstead.app.numbers",
            "org.ohmstead.app.projects",
            "org.ohmstead.app.keys",
            "org.ohmstead.workbench.sample.preferences"
        }) {
            assertTrue(ids.contains(page), page + " is not among " + ids);
        }
        ICommandService commands = PlatformUI.getWorkbench().getService(ICommandService.class);
        assertTrue(commands.getCommand("org.eclipse.equinox.p2.ui.sdk.install").isDefined());
        IBindingService keys = PlatformUI.getWorkbench().getService(IBindingService.class);
        assertTrue(Optional.ofNullable(keys.getActiveScheme())
                .filter(scheme -> scheme.getId().equals("org.ohmstead.workbench.keys"))
                .isPresent());
    }

    @Test
    void theSampleModuleFindsProblemsOfItsOwn(@TempDir Path folder) throws Exception {
        ProjectDesk desk = bench.desk();
        bench.openCopy(folder);
        desk.session()
                .orElseThrow()
                .edit(
                        "Test",
                        project -> project.withBench(
                                project.bench().withCable(new Cable(0.5, 10, OptionalDouble.empty()))));
        bench.pump()
                .until(
                        () -> desk.problems().stream()
                                .anyMatch(found -> found.severity() == Severity.WARNING
                                        && found.where().equals("$.bench.cable")),
                        () -> "The sample's problem was not found: "
                                + Arrays.toString(desk.problems().toArray()));
        bench.go("$.bench.cable");
        assertTrue(bench.page().getActiveEditor().getTitle().contains("Supply cable"));
        bench.close();
    }
}
