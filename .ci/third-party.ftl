# What is shipped with Slabfield

Libraries inside `slabfield.jar`, with their licences as their authors state them. Written by `.ci/inventory`; do not edit.

| library | version | licence |
| --- | --- | --- |
<#list dependencyMap as e>
<#assign project = e.getKey()/>
<#assign licenses = e.getValue()/>
| `${project.groupId}:${project.artifactId}` | ${project.version} | ${licenses?join("; ")} |
</#list>

The app folder and the Debian package also carry a Java runtime, OpenJDK 17: GPL version 2 with the Classpath Exception. Its
own notices stand in `lib/runtime/legal`. JavaFX is under the same terms.

Used to build and test, not shipped: see the test scope and the plugins in `pom.xml`.
