// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.cli;

import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import java.util.Locale;
import java.util.Optional;
import java.util.concurrent.Callable;
import org.ohmstead.testlog.shared.LabRole;
import org.ohmstead.testlog.shared.SharedLab;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Parameters;

/** Gives a login a role in the shared log. */
@Command(
        name = "grant",
        description = {"${bundle:lab.grant.does}", ""},
        footer = {"", "${bundle:lab.grant.example}"})
final class LabGrantCommand implements Callable<Integer> {
    private static final String NONE = "none";

    private final Console console;

    @Mixin
    private HelpOption help;

    @Mixin
    private JsonOption json;

    @Mixin
    private ProjectParameter project;

    @Parameters(index = "1", paramLabel = "LOGIN", descriptionKey = "lab.grant.LOGIN")
    private String login;

    @Parameters(index = "2", paramLabel = "ROLE", descriptionKey = "lab.grant.ROLE")
    private String word;

    LabGrantCommand(Console console) {
        this.console = console;
    }

    @Override
    public Integer call() throws Exception {
        String wanted = word.toLowerCase(Locale.ROOT);
        Optional<LabRole> role = LabRole.ofWord(wanted);
        if (role.isEmpty() && !wanted.equals(NONE)) {
            throw new InputException(Texts.of("lab.noRole", word));
        }
        try (SharedLab lab = LabAccess.of(project.open()).connect()) {
            lab.grant(login, role);
        }
        if (json.wanted()) {
            console.json(
                    JsonNodeFactory.instance.objectNode().put("login", login).put("role", wanted));
        } else {
            console.line(role.isEmpty() ? Texts.of("lab.roleTaken", login) : Texts.of("lab.roleGiven", login, wanted));
        }
        return ExitCodes.DONE;
    }
}
